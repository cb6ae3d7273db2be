#include "bench_fixture.hpp"

#include "sim/bench/filter.hpp"
#include "sim/bench/spin.hpp"
#include "sim/column/column.hpp"

#include <catch2/catch.hpp>

using namespace matula;
using namespace matula::bench;

namespace {

double solids_g(const matter::Mixture& mixture) {
  double sum = 0;
  for (const auto& [kind, population] : mixture.populations.present()) {
    sum += population.total_g();
  }
  return sum;
}

double solids_above_g(const column::Column& column) {
  double sum = 0;
  for (const auto& layer : column.layers) {
    sum += solids_g(layer);
  }
  return sum;
}

Setup cloudy() {
  Setup s = test::setup();
  s.specimen.particles_mg_per_l = {{"cells", 300}};
  return s;
}

double shown(State& state, const Setup& setup, const Action& action) {
  const Outcome outcome = perform(state, setup, action);
  REQUIRE(outcome.done);
  REQUIRE(outcome.reading);
  return outcome.reading->value;
}

} // namespace

TEST_CASE("RCF and turns a minute") {
  // 1.118e-5 r(cm) rpm2; 400 g at 16 cm is 1495 rpm (arithmetic of the printed formula).
  CHECK(rcf_of(16, 1495) == Approx(400).margin(0.5));
  CHECK(rpm_of(16, 400) == Approx(1495).margin(1));
  CHECK(rcf_of(10, 1000) == Approx(1.118e-5 * 10 * 1e6).epsilon(0.001));
}

TEST_CASE("A rotor out of balance is refused before harm, and remembered") {
  const Setup setup = cloudy();
  State state = begin(setup);
  perform(state, setup, Pour{"specimen", "tube-1", 10});
  Outcome outcome = perform(state, setup, Centrifuge{{"tube-1"}, 400, 300});
  CHECK_FALSE(outcome.done);
  CHECK(outcome.caution == "centrifuge");
  perform(state, setup, Pour{"water", "tube-2", 8});
  CHECK_FALSE(perform(state, setup, Centrifuge{{"tube-1", "tube-2"}, 400, 300}).done);
  CHECK(state.hazards.unbalanced_rotor.times == 2);
  perform(state, setup, Pour{"water", "tube-2", 2.1});
  CHECK(perform(state, setup, Centrifuge{{"tube-1", "tube-2"}, 400, 300}).done);
  CHECK(state.hazards.unbalanced_rotor.times == 2);
  CHECK_FALSE(perform(state, setup, Centrifuge{{"tube-1", "tube-2"}, 9000, 300}).done);
  CHECK_FALSE(perform(state, setup, Centrifuge{{"jar"}, 400, 300}).done);
}

TEST_CASE("Spinning clears a cloudy urine, and the clear top can be poured off") {
  const Setup setup = cloudy();
  State state = begin(setup);
  perform(state, setup, Mix{"specimen"});
  perform(state, setup, Pour{"specimen", "tube-1", 10});
  perform(state, setup, Pour{"water", "tube-2", 10.2});
  const double before = solids_above_g(state.vessels.at("tube-1").column);
  REQUIRE(before > 1e-4);
  const double all = solids_g(column::whole(state.vessels.at("tube-1").column, *setup.chemistry->catalogue));
  REQUIRE(perform(state, setup, Centrifuge{{"tube-1", "tube-2"}, 400, 300}).done);
  const column::Column& spun = state.vessels.at("tube-1").column;
  CHECK(solids_above_g(spun) < 0.01 * before);
  CHECK(solids_g(column::whole(spun, *setup.chemistry->catalogue)) == Approx(all).epsilon(1e-9));
  const double button = solids_g(spun.sediment);
  perform(state, setup, Pour{"tube-1", "tube-3", 9.5, true});
  CHECK(solids_g(state.vessels.at("tube-1").column.sediment) == Approx(button).epsilon(0.01));
  CHECK(solids_above_g(state.vessels.at("tube-3").column) < 0.01 * before);
  // The same time on the rack clears it far less.
  State resting = begin(setup);
  perform(resting, setup, Mix{"specimen"});
  perform(resting, setup, Pour{"specimen", "tube-1", 10});
  perform(resting, setup, Wait{360});
  CHECK(solids_above_g(resting.vessels.at("tube-1").column) > 0.5 * before);
}

TEST_CASE("Paper holds cells back and lets fine haze through; nothing is lost") {
  const Setup setup = cloudy();
  State state = begin(setup);
  perform(state, setup, Mix{"specimen"});
  perform(state, setup, Pour{"specimen", "tube-1", 10});
  const auto& catalogue = *setup.chemistry->catalogue;
  const matter::Mixture before = column::whole(state.vessels.at("tube-1").column, catalogue);
  REQUIRE(perform(state, setup, Filter{"tube-1", "tube-2", 8}).done);
  REQUIRE(state.filter_residue);
  matter::Mixture after = column::whole(state.vessels.at("tube-1").column, catalogue);
  matter::merge(after, column::whole(state.vessels.at("tube-2").column, catalogue));
  matter::merge(after, state.filter_residue->held);
  CHECK(after.volume_ml == Approx(before.volume_ml));
  CHECK(solids_g(after) == Approx(solids_g(before)).epsilon(1e-9));
  CHECK(matter::solute_mass_g(after, catalogue) == Approx(matter::solute_mass_g(before, catalogue)));
  CHECK(solids_g(state.filter_residue->held) > 0.9 * 0.8 * solids_g(before));
  CHECK(held_back(setup.tools, 8) > 0.98);
  CHECK(held_back(setup.tools, 0.3) < 0.01);
  CHECK_FALSE(perform(state, setup, Filter{"tube-2", "tube-3", 0.2}).done);
}

TEST_CASE("Refractometer at the bench: water, urine, a dirty prism and a cloudy specimen") {
  Setup setup = test::setup();
  State state = begin(setup);
  CHECK(shown(state, setup, Refract{"water"}) == Approx(1.000).margin(0.0006));
  const double urine = shown(state, setup, Refract{"specimen"});
  CHECK(urine > 1.010);
  CHECK(shown(state, setup, Refract{"water", false}) > 1.002); // the last film was left on the prism
  CHECK(shown(state, setup, Refract{"water"}) == Approx(1.000).margin(0.0006));
  setup.refractometer.zero_error = 0.002;
  CHECK(shown(state, setup, Refract{"water"}) == Approx(1.002).margin(0.0006));
  Setup thick = test::setup();
  thick.specimen.particles_mg_per_l = {{"cells", 5000}};
  State turbid = begin(thick);
  perform(turbid, thick, Mix{"specimen"});
  const Outcome outcome = perform(turbid, thick, Refract{"specimen"});
  REQUIRE(outcome.reading);
  CHECK((outcome.reading->off_scale || outcome.reading->spread > 0.001));
}

TEST_CASE("Photometer: zero on a blank, in even steps, with a ceiling") {
  Setup setup = test::setup();
  setup.specimen.urochrome_a420 = 0.4;
  State state = begin(setup);
  perform(state, setup, Pour{"water", "tube-1", 6});
  perform(state, setup, Pour{"specimen", "tube-2", 6});
  CHECK(shown(state, setup, Measure{"tube-1", 420, true}) == Approx(0).margin(0.0011));
  // 0.4 mmol/L of the yellow pigment: 0.4 a centimetre at 420 nm by its definition, 14 mm of tube.
  CHECK(shown(state, setup, Measure{"tube-2", 420}) == Approx(0.4 * 1.4).margin(0.01));
  CHECK_FALSE(perform(state, setup, Measure{"tube-2", 900}).done);
  CHECK_FALSE(perform(state, setup, Measure{"specimen", 620}).done);
  CHECK_FALSE(perform(state, setup, Measure{"tube-3", 620}).done);
  const auto dark = instrument::show(setup.photometer, 6, 0, 0.5);
  CHECK(dark.absorbance == Approx(2.524).margin(0.002)); // log10((1 + 0.003)/0.003)
  CHECK(dark.over);
}
