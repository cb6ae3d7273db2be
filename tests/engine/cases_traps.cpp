// What the trap cases show besides their grades: the sign that gives each of them away.
#include "cases_support.hpp"

#include "engine/scoring/moments.hpp"
#include "engine/sitting/setup.hpp"
#include "sim/bench/bench.hpp"
#include "sim/bench/scene.hpp"
#include "sim/reading/observables.hpp"

#include <cstdlib>
#include <iostream>

using namespace matula;
using reading::Grade;
using reading::ScaleKind;

namespace {

/// One bench of a case, worked step by step.
struct Work {
  explicit Work(const std::string& key)
      : setup(sitting::make_setup(test::world(), test::load_case(key))), state(bench::begin(setup)) {
    act(bench::Protect{true, true});
    act(bench::Mix{"specimen", bench::Manner::Swirl, 10});
  }

  bench::Outcome act(const bench::Action& action) {
    const auto outcome = bench::perform(state, setup, action);
    INFO(outcome.refused_because);
    REQUIRE(outcome.done);
    return outcome;
  }

  void boil(const std::string& tube, double seconds) {
    act(bench::LightFlame{true});
    act(bench::Move{tube, bench::Place::Flame, 0.85, false, true});
    act(bench::Wait{seconds});
    act(bench::Move{tube, bench::Place::Rack, 0.85, false, true});
    act(bench::LightFlame{false});
  }

  [[nodiscard]] Grade grade(ScaleKind scale, const std::string& tube) const {
    return scoring::read_vessel(state, setup, test::world().thresholds, scale, tube).grade;
  }

  [[nodiscard]] appearance::Appearance seen(const std::string& vessel, appearance::Card card) const {
    return bench::look(state, setup, vessel, {card, optics::Lamp::Daylight});
  }

  [[nodiscard]] std::string clarity() const {
    return reading::read_clarity(seen("specimen", appearance::Card::Printed), test::world().thresholds);
  }

  double float_reading() {
    act(bench::Float{"jar", true, true});
    act(bench::Wait{15});
    const auto scene = bench::make_scene(state, setup, {appearance::Card::White, optics::Lamp::Daylight});
    REQUIRE(scene.floating);
    const double reading = scene.floating->scale.reading_at_surface;
    act(bench::LiftFloat{});
    return reading;
  }

  bench::Setup setup;
  bench::State state;
};

double luminance(const appearance::Appearance& looks, reading::Stretch stretch) {
  return reading::mean_colour_on_white(looks, stretch).y;
}

void print(const std::string& text) {
  if (std::getenv("MATULA_PRINT") != nullptr) {
    std::cout << text << '\n';
  }
}

} // namespace

TEST_CASE("Alkaline urine: the cloud of boiling is gone once the acid is in") {
  Work work("alkaline");
  work.act(bench::Pour{"specimen", "tube-1", 9, false});
  work.boil("tube-1", 85);
  const auto before = work.grade(ScaleKind::HeatCloud, "tube-1");
  work.act(bench::Dispense{"acetic_acid_10", "tube-1", 0.2, false});
  work.boil("tube-1", 30);
  work.act(bench::Wait{20});
  print("alkaline " + work.clarity() + " boiled " + reading::to_word(before) + " acid " +
        reading::to_word(work.grade(ScaleKind::HeatCloud, "tube-1")));
  CHECK(before >= Grade::OnePlus);
  CHECK(work.grade(ScaleKind::HeatCloud, "tube-1") == Grade::Negative);
}

TEST_CASE("From the refrigerator: cloudy and heavy while cold, clear once warmed") {
  Work work("from_the_refrigerator");
  const auto cold = work.clarity();
  work.act(bench::Pour{"specimen", "jar", 30, true});
  const double cold_reading = work.float_reading();
  work.act(bench::Pour{"jar", "specimen", 30, false});
  work.act(bench::Pour{"specimen", "tube-1", 6, false});
  work.act(bench::SetBath{50});
  work.act(bench::Move{"tube-1", bench::Place::Bath, 0.85, false, true});
  work.act(bench::Wait{900});
  const auto warmed =
      reading::read_clarity(work.seen("tube-1", appearance::Card::Printed), test::world().thresholds);
  work.act(bench::Wait{7200});
  CHECK(work.clarity() == "clear");
  work.act(bench::Mix{"specimen", bench::Manner::Swirl, 10});
  work.act(bench::Pour{"specimen", "jar", 30, true});
  const double warm_reading = work.float_reading();
  print("cold " + cold + ' ' + std::to_string(cold_reading) + " warmed tube " + warmed + ", at the room " +
        std::to_string(warm_reading));
  CHECK(cold == "turbid");
  CHECK(warmed == "clear");
  CHECK(cold_reading - warm_reading > 0.0015);
}

TEST_CASE("Homogentisic acid: alkali blackens it from the top") {
  Work work("blackens");
  work.act(bench::Pour{"specimen", "tube-1", 5, false});
  const double fresh = luminance(work.seen("tube-1", appearance::Card::White), {0.1, 0.9});
  work.act(bench::Dispense{"sodium_hydroxide_10", "tube-1", 1, false});
  work.act(bench::Mix{"tube-1", bench::Manner::Invert, 3});
  work.act(bench::Wait{300});
  const auto looks = work.seen("tube-1", appearance::Card::White);
  print("blackens fresh " + std::to_string(fresh) + " top " + std::to_string(luminance(looks, {0.8, 1})) +
        " bottom " + std::to_string(luminance(looks, {0.1, 0.3})));
  CHECK(luminance(looks, {0.8, 1}) < fresh / 3);
  CHECK(luminance(looks, {0.8, 1}) <= luminance(looks, {0.1, 0.3}));
}

TEST_CASE("Vitamin C works on copper in the cold, sugar does not") {
  const auto cold_colour = [](const std::string& key) {
    Work work(key);
    work.act(bench::Dispense{"benedict", "tube-1", 5, false});
    work.act(bench::Pour{"specimen", "tube-1", 0.5, false});
    work.act(bench::Mix{"tube-1", bench::Manner::Invert, 5});
    const auto before =
        reading::mean_colour_on_white(work.seen("tube-1", appearance::Card::White), {0.1, 0.9});
    work.act(bench::Wait{900});
    work.act(bench::Mix{"tube-1", bench::Manner::Invert, 5});
    const auto after =
        reading::mean_colour_on_white(work.seen("tube-1", appearance::Card::White), {0.1, 0.9});
    const optics::Xyz white{0.95047, 1.0, 1.08883};
    return optics::ciede2000(optics::to_lab(before, white), optics::to_lab(after, white));
  };
  const double vitamin = cold_colour("vitamins");
  const double sugar = cold_colour("orange_tube");
  print("cold change vitamin " + std::to_string(vitamin) + " sugar " + std::to_string(sugar));
  CHECK(vitamin > 5);
  CHECK(sugar < 2);
}

TEST_CASE("Contrast medium lifts the float beyond what a kidney can do") {
  Work work("contrast");
  work.act(bench::Pour{"specimen", "jar", 30, true});
  CHECK(work.float_reading() > 1.035);
}

TEST_CASE("Light chains cloud near 55 C and clear towards the boil") {
  Work work("light_chains");
  work.act(bench::Pour{"specimen", "tube-1", 8, false});
  work.act(bench::SetBath{58});
  work.act(bench::Wait{120});
  work.act(bench::Move{"tube-1", bench::Place::Bath, 0.85, false, true});
  work.act(bench::Wait{600});
  const double warm =
      reading::mean_print_contrast(work.seen("tube-1", appearance::Card::Printed), {0.2, 0.8});
  work.act(bench::SetBath{99});
  work.act(bench::Wait{600});
  const double hot = reading::mean_print_contrast(work.seen("tube-1", appearance::Card::Printed), {0.2, 0.8});
  print("light chains print at 58 C " + std::to_string(warm) + ", at 99 C " + std::to_string(hot));
  CHECK(warm < 0.6);
  CHECK(hot > warm + 0.2);
}
