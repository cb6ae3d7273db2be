#include "engine/author/preview.hpp"

#include "engine/assets/world.hpp"
#include "engine/author/curve_figure.hpp"
#include "engine/author/recipe_here.hpp"
#include "engine/scoring/moments.hpp"
#include "engine/sitting/setup.hpp"
#include "sim/bench/floating.hpp"
#include "sim/instrument/buoyancy.hpp"
#include "sim/matter/density.hpp"
#include "sim/matter/osmolality.hpp"
#include "sim/matter/ph.hpp"
#include "sim/reading/graduation.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <cmath>

namespace matula::author {

namespace {

constexpr double gravity_c = 20;

appearance::Appearance look_on(const bench::State& state, const bench::Setup& setup,
                               const bench::VesselName& vessel, appearance::Card card) {
  return bench::look(state, setup, vessel, {card, optics::Lamp::Daylight});
}

/// The case's float, lowered into a jar of the specimen and left to come to rest; null when it cannot swim.
std::shared_ptr<const bench::State> float_it(bench::State state, const bench::Setup& setup) {
  constexpr double jar_ml = 40;
  constexpr double left_ml = 2;
  constexpr double settles_s = 30;
  const double ml = std::min(jar_ml, setup.specimen.volume_ml - left_ml);
  if (ml <= 0) {
    return nullptr;
  }
  for (const bench::Action& action :
       std::vector<bench::Action>{bench::Mix{"specimen", bench::Manner::Swirl, 5},
                                  bench::Pour{"specimen", "jar", ml, true}, bench::Float{"jar", true, true},
                                  bench::Wait{settles_s}, bench::ClearBubbles{}, bench::Wait{settles_s}}) {
    if (!bench::perform(state, setup, action).done) {
      return nullptr;
    }
  }
  if (!state.floating || state.floating->state.grounded) {
    return nullptr; // It stands on the bottom.
  }
  return std::make_shared<const bench::State>(std::move(state));
}

std::optional<double> float_reading(const bench::State& floated, const bench::Setup& setup) {
  const auto view = bench::scale_view(floated, setup);
  return view ? std::optional(view->reading_at_surface) : std::nullopt;
}

std::string say_figure(double value, const scoring::TestRule& test) {
  constexpr double rounding = 1e-9;
  const int digits = std::max(0, static_cast<int>(std::ceil(-std::log10(test.number.division) - rounding)));
  return fmt::format("{:.{}f}{}{}", value, digits, test.number.unit.empty() ? "" : " ", test.number.unit);
}

/// The figure of a test that ends in one, on the finished bench.
std::optional<double> figure_of(const Shelf& shelf, const bench::Setup& setup, const bench::State& begun,
                                const scoring::TestRule& test, const scoring::BookTube& tube,
                                const scoring::GiveUp& give_up) {
  if (test.curve) {
    return curve_figure(shelf, setup, begun, test, give_up);
  }
  if (test.number.instrument == "deposit") {
    return reading::read_graduation(look_on(tube.state, setup, tube.vessel, appearance::Card::White));
  }
  bench::State state = tube.state;
  const auto outcome = bench::perform(state, setup, bench::Refract{"specimen", true});
  return outcome.reading && !outcome.reading->off_scale ? std::optional(outcome.reading->value)
                                                        : std::nullopt;
}

void read(const Shelf& shelf, const bench::Setup& setup, const bench::State& begun,
          const scoring::TestRule& test, const scoring::BookTube& tube, const scoring::GiveUp& give_up,
          Shown& shown) {
  if (test.result == procedure::Result::Number) {
    shown.figure = figure_of(shelf, setup, begun, test, tube, give_up);
    shown.word = shown.figure ? say_figure(*shown.figure, test) : "off the scale";
    return;
  }
  const auto grade =
      scoring::read_vessel(tube.state, setup, shelf.world->thresholds, test.scale, tube.vessel);
  shown.word = test.word(grade.grade);
  shown.intensity = grade.intensity;
  shown.from_line = from_line(grade.intensity, test.words.size());
  shown.seen = grade.seen;
}

} // namespace

double from_line(double intensity, std::size_t words) {
  const double last = static_cast<double>(words) - 1.5; // The line between the last two words.
  const double line = std::clamp(std::floor(intensity) + 0.5, 0.5, last);
  return std::abs(intensity - line);
}

double gravity_of(const bench::State& begun, const bench::Setup& setup) {
  auto vessel = begun.vessels.at("specimen");
  for (auto& layer : vessel.column.layers) {
    layer.temperature_c = gravity_c;
  }
  auto urinometer = setup.urinometer;
  urinometer.zero_error = 0;
  urinometer.calibration_c = gravity_c;
  const auto bath = bench::bath_for_float(vessel, setup);
  return instrument::printed_reading(urinometer, instrument::rest_mm(urinometer, bath, 0));
}

Liquid show_liquid(const Shelf& shelf, const bench::Setup& setup, const bench::State& begun) {
  const auto& catalogue = shelf.world->catalogue;
  bench::State state = begun;
  (void)bench::perform(state, setup, bench::Mix{"specimen", bench::Manner::Swirl, 5});
  const auto& column = state.vessels.at("specimen").column;
  const auto mixed = column::whole(column, catalogue);
  Liquid liquid;
  liquid.colour = reading::read_colour(look_on(state, setup, "specimen", appearance::Card::White),
                                       shelf.world->thresholds);
  liquid.clarity = reading::read_clarity(look_on(state, setup, "specimen", appearance::Card::Printed),
                                         shelf.world->thresholds);
  liquid.odours = bench::perform(state, setup, bench::Smell{"specimen"}).odours;
  liquid.gravity = gravity_of(state, setup);
  auto at_20 = mixed;
  at_20.temperature_c = gravity_c;
  liquid.density_20 = matter::density_kg_m3(at_20, catalogue) / matter::water_density_kg_m3(gravity_c);
  liquid.temperature_c = column::mean_temperature_c(column);
  liquid.ph = matter::ph(mixed, catalogue);
  liquid.osmolality = matter::osmolality_mosm_per_kg(mixed, catalogue);
  liquid.chloride_mmol_per_l = generator::derive(setup.specimen, catalogue).chloride_mmol_per_l;
  return liquid;
}

Shown show_test(const Shelf& shelf, const bench::Setup& setup, const bench::State& begun,
                const std::string& key, const scoring::GiveUp& give_up) {
  const auto began = std::chrono::steady_clock::now();
  const auto* test = shelf.standards->rules.find_test(key);
  if (test == nullptr) {
    throw std::invalid_argument("no such test: " + key);
  }
  Shown shown;
  shown.test = key;
  shown.title = test->title;
  bench::Setup here = setup;
  auto recipe =
      recipe_here(*test, shelf.standards->recipes.at(key), setup.reagents_out, shelf.world->catalogue);
  shown.other_bottle = put_out(recipe, test->curve, here.reagents_out);
  auto tube = scoring::do_by_the_book(here, begun, recipe, give_up);
  shown.stopped_because = tube.stopped_because;
  if (tube.stopped_because.empty()) {
    read(shelf, here, begun, *test, tube, give_up, shown);
  }
  shown.vessel = tube.vessel;
  shown.state = std::make_shared<const bench::State>(std::move(tube.state));
  shown.took_ms = std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - began).count();
  return shown;
}

Preview::Preview(const Shelf& shelf, scenario::Scenario scenario, std::vector<std::string> tests)
    : shelf_(&shelf), scenario_(std::move(scenario)), tests_(std::move(tests)),
      setup_(sitting::make_setup(*shelf.world, scenario_)), begun_(bench::begin(setup_)) {
  tests_ = tests_.empty() ? scenario_.asked.procedures : tests_;
  liquid_ = show_liquid(shelf, setup_, begun_);
  floated_ = float_it(begun_, setup_);
  liquid_.float_reads = floated_ ? float_reading(*floated_, setup_) : std::nullopt;
  warnings_ = implausible(scenario_.specimen, shelf.physiology, *shelf.limits, shelf.world->catalogue);
}

bool Preview::next(const scoring::GiveUp& give_up) {
  if (done()) {
    return false;
  }
  auto shown = show_test(*shelf_, setup_, begun_, tests_[shown_.size()], give_up);
  if (give_up && give_up()) {
    return false;
  }
  shown_.push_back(std::move(shown));
  return true;
}

Preview preview(const Shelf& shelf, const scenario::Scenario& scenario, std::vector<std::string> tests) {
  Preview all(shelf, scenario, std::move(tests));
  while (all.next()) {
  }
  return all;
}

} // namespace matula::author
