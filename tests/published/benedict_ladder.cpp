// Benedict's test done by the book against the colours the trade grades by (g/dL of glucose).
// First print: green without precipitate 0.1-0.25 trace, green with precipitate 0.5 1+, yellow 1.0 2+,
// yellow-orange 1.5 3+, brick red over 2.0 4+. Second print: green 0.1-0.5, yellow 0.5-1, orange 1-1.5,
// red 1.5-2, brick red over 2. Teaching pages.
#include "engine/assets/world.hpp"
#include "engine/scoring/ladder.hpp"
#include "engine/scoring/moments.hpp"
#include "engine/scoring/standards.hpp"
#include "sim/reading/observables.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <cstdlib>
#include <memory>
#include <numbers>

using namespace matula;
using reading::Grade;

namespace {

const assets::World& world() {
  static const std::unique_ptr<const assets::World> loaded = [] {
    auto result = assets::load(assets::folder());
    REQUIRE(result);
    return std::move(*result);
  }();
  return *loaded;
}

const specimen::Specimen& plain_urine() {
  static const specimen::Specimen plain = *scoring::load_plain_urine(assets::folder());
  return plain;
}

scoring::Recipe recipe() {
  static const auto standards = scoring::load_standards(assets::folder());
  REQUIRE(standards);
  return standards->recipes.at("benedict");
}

scoring::Recipe heated_for(double seconds) {
  scoring::Recipe changed = recipe();
  for (auto& step : changed.steps) {
    step.seconds = step.kind == scoring::StepKind::Heat ? seconds : step.seconds;
  }
  return changed;
}

constexpr optics::Xyz d65_white{0.95047, 1.0, 1.08883};

struct Seen {
  Grade shaken = Grade::Negative;
  Grade stood = Grade::Negative;
  double hue_deg = 0;
  double lightness = 0;
  double bed_mm = 0;
  double bed_hue_deg = 0;
};

double hue_deg(const optics::Lab& lab) {
  const double degrees = std::atan2(lab.b, lab.a) * 180 / std::numbers::pi;
  return degrees < -30 ? degrees + 360 : degrees;
}

Grade grade_of(const bench::State& state, const bench::Setup& setup, const bench::VesselName& vessel) {
  return scoring::read_vessel(state, setup, world().thresholds, reading::ScaleKind::CopperColour, vessel)
      .grade;
}

Seen look(bench::State& state, const bench::Setup& setup, const bench::VesselName& vessel) {
  Seen seen;
  seen.shaken = grade_of(state, setup, vessel);
  const optics::Lab shaken =
      scoring::observe(state, setup, vessel, reading::ScaleKind::CopperColour).colour_on_white;
  seen.hue_deg = hue_deg(shaken);
  seen.lightness = shaken.l;
  bench::advance(state, setup, 600);
  seen.stood = grade_of(state, setup, vessel);
  const auto bed = bench::look(state, setup, vessel, {}).sediment;
  seen.bed_mm = bed.height_mm;
  seen.bed_hue_deg = hue_deg(optics::to_lab(bed.colour, d65_white));
  return seen;
}

Seen flame(double mg_per_dl, const scoring::Recipe& way = recipe()) {
  const auto setup = scoring::ladder_setup(world(), plain_urine(), way, mg_per_dl);
  auto tube = scoring::ladder_tube(setup, way);
  REQUIRE(tube.stopped_because.empty());
  return look(tube.state, setup, tube.vessel);
}

/// The same amounts in a bath that already has its temperature.
Seen bath(double mg_per_dl, double temperature_c, double seconds) {
  const auto setup = scoring::ladder_setup(world(), plain_urine(), recipe(), mg_per_dl);
  auto state = bench::begin(setup);
  const bench::VesselName tube = "tube-1";
  const std::vector<bench::Action> actions{bench::Protect{true, true},
                                           bench::SetBath{temperature_c},
                                           bench::Wait{1800},
                                           bench::Dispense{"benedict", tube, 5, false},
                                           bench::Pour{"specimen", tube, 0.5, false},
                                           bench::Mix{tube, bench::Manner::Invert, 5},
                                           bench::Move{tube, bench::Place::Bath, 0.85, false, true},
                                           bench::Wait{seconds},
                                           bench::Move{tube, bench::Place::Rack, 0.85, false, true},
                                           bench::Wait{60},
                                           bench::Mix{tube, bench::Manner::Invert, 5}};
  for (const auto& action : actions) {
    REQUIRE(bench::perform(state, setup, action).done);
  }
  return look(state, setup, tube);
}

int apart(Grade one, Grade other) {
  return std::abs(static_cast<int>(one) - static_cast<int>(other));
}

} // namespace

TEST_CASE("the middle of each published band reads as its grade, shaken and stood") {
  const std::vector<std::pair<double, Grade>> bands{{0, Grade::Negative},     {170, Grade::Trace},
                                                    {500, Grade::OnePlus},    {1000, Grade::TwoPlus},
                                                    {1500, Grade::ThreePlus}, {2500, Grade::FourPlus}};
  for (const auto& [mg_per_dl, grade] : bands) {
    INFO(mg_per_dl << " mg/dL");
    const Seen seen = flame(mg_per_dl);
    CHECK(reading::to_word(seen.shaken) == reading::to_word(grade));
    CHECK(reading::to_word(seen.stood) == reading::to_word(grade));
  }
}

TEST_CASE("where the two prints overlap the tube has the colour both name") {
  // CIELAB hue: blue-green over 165, green over 120, yellow-green 105-120, yellow 80-105, orange 65-80,
  // brick red below 65. "Yellow-green to yellow" is the wider of the two prints for 2+.
  CHECK(flame(175).hue_deg > 165); // Green in both, of the bluish kind teaching pages give a trace.
  CHECK(flame(375).hue_deg > 120); // Green in both.
  CHECK(flame(950).hue_deg < 120);
  const double yellow = flame(1150).hue_deg;
  CHECK(yellow < 105);
  CHECK(yellow > 80);
  const double orange = flame(1450).hue_deg;
  CHECK(orange < 80);
  CHECK(orange > 65);
  CHECK(flame(2500).hue_deg < 62);
}

TEST_CASE("the precipitate itself is yellow while its grains are fine and red when they are coarse") {
  // "Can be yellow or red depending on the size of the grains": Greenwood and Earnshaw 1997. The bed holds
  // nearly nothing else.
  const double weak = flame(500).bed_hue_deg;
  const double middle = flame(1000).bed_hue_deg;
  const double strong = flame(2500).bed_hue_deg;
  CHECK(weak > 90); // Greenish yellow.
  CHECK(middle > 74);
  CHECK(middle < weak - 8);
  CHECK(strong < 50); // Red.
}

TEST_CASE("a weak tube is pale with fine grains, not dark as with a dye") {
  CHECK(flame(170).lightness > 52);
  CHECK(flame(500).lightness > 62);
}

TEST_CASE("more sugar never reads less and never turns back towards blue, up to the end of the copper") {
  Grade last = Grade::Negative;
  double last_hue = 300;
  for (const double mg_per_dl :
       {0, 60, 80, 120, 180, 250, 350, 500, 700, 900, 1100, 1300, 1600, 1900, 2200}) {
    INFO(mg_per_dl << " mg/dL");
    const Seen seen = flame(mg_per_dl);
    CHECK(seen.shaken >= last);
    CHECK(seen.hue_deg < last_hue + 1); // 1 degree: the urine's own water and the table's grain.
    last = seen.shaken;
    last_hue = seen.hue_deg;
  }
  CHECK(flame(4000).shaken == Grade::FourPlus);
}

TEST_CASE("the least sugar seen lies between 50 and 80 mg/dL") {
  const double none = flame(0).hue_deg;
  CHECK(none - flame(40).hue_deg < 5);
  CHECK(none - flame(85).hue_deg > 25);
}

TEST_CASE("the bed that is left after ten minutes grows with the sugar and can be judged") {
  CHECK(flame(0).bed_mm == 0);
  const double weak = flame(150).bed_mm;
  const double middle = flame(600).bed_mm;
  const double strong = flame(2500).bed_mm;
  CHECK(weak < 0.7); // "Little or no precipitate".
  CHECK(middle > 1);
  CHECK(strong > middle);
}

TEST_CASE("five minutes in boiling water read as two in the flame, within a grade") {
  for (const double mg_per_dl : {0, 170, 500, 1000, 1500, 2500}) {
    INFO(mg_per_dl << " mg/dL");
    CHECK(apart(bath(mg_per_dl, 100, 300).shaken, flame(mg_per_dl).shaken) <= 1);
  }
}

TEST_CASE("a weak tube that is boiled twice as long stays green") {
  for (const double mg_per_dl : {100, 170, 240}) {
    INFO(mg_per_dl << " mg/dL");
    CHECK(flame(mg_per_dl, heated_for(240)).hue_deg > 110);
  }
}

TEST_CASE("warm water and sucrose leave the reagent blue") {
  CHECK(bath(1000, 55, 600).shaken == Grade::Negative);
  scoring::Recipe sucrose = recipe();
  sucrose.ladder_species = "sucrose";
  CHECK(flame(2000, sucrose).shaken == Grade::Negative);
}
