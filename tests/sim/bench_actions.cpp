#include "bench_fixture.hpp"

#include "sim/matter/density.hpp"
#include "sim/matter/ph.hpp"

#include <catch2/catch.hpp>

using namespace matula;
using namespace matula::bench;

namespace {

std::string refusal(State& state, const Setup& setup, const Action& action) {
  const std::uint64_t before = state_hash(state);
  const Outcome outcome = perform(state, setup, action);
  CHECK_FALSE(outcome.done);
  CHECK(state_hash(state) == before);
  return outcome.refused_because;
}

} // namespace

TEST_CASE("The bench begins with a specimen of the wanted pH, water and empty glass") {
  const Setup setup = test::setup();
  const State state = begin(setup);
  CHECK(state.vessels.size() == 15);
  const matter::Mixture urine =
      column::whole(state.vessels.at("specimen").column, *setup.chemistry->catalogue);
  CHECK(urine.volume_ml == Approx(60));
  CHECK(matter::ph(urine, *setup.chemistry->catalogue) == Approx(6.0).margin(0.01));
  CHECK(state.vessels.at("tube-12").column.volume_ml() == 0);
}

TEST_CASE("What cannot be done is refused in words and changes nothing") {
  const Setup setup = test::setup();
  State state = begin(setup);
  CHECK(refusal(state, setup, Pour{"specimen", "tube-1", 70, false}) ==
        "Only 60 mL are left in the specimen cup.");
  CHECK(refusal(state, setup, Pour{"specimen", "tube-1", 25, false}) ==
        "It would run over: tube 1 has room for 20 mL more.");
  CHECK(refusal(state, setup, Pour{"specimen", "tube-99", 1, false}).find("tube-99") != std::string::npos);
  CHECK(refusal(state, setup, Pour{"tube-1", "tube-2", 1, false}) == "There is nothing in tube 1.");
  CHECK(refusal(state, setup, Pour{"specimen", "tube-1", -1, false}) == "Say how much: more than 0 mL.");
  CHECK(refusal(state, setup, Dispense{"ether", "tube-1", 1, false}) ==
        "There is no bottle 'ether' on the shelf.");
  CHECK(refusal(state, setup, Move{"tube-1", Place::Flame}) == "The flame is off: light the burner first.");
  CHECK(refusal(state, setup, Move{"specimen", Place::Flame}) == "Only a test tube is held in the flame.");
  CHECK(refusal(state, setup, Float{"tube-1"}) == "The float is wider than tube 1: use the jar.");
  CHECK(refusal(state, setup, Float{"jar"}) == "There is nothing in the jar to float in.");
  CHECK(refusal(state, setup, Thermometer{"tube-1"}).find("Too little") == 0);
  CHECK(refusal(state, setup, Mix{"tube-1"}) == "There is nothing in tube 1 to mix.");
  CHECK(refusal(state, setup, Discard{"specimen"}) == "Keep the specimen: it cannot be collected again.");
  CHECK(refusal(state, setup, SetBath{140}).find("0 to 100") != std::string::npos);
  CHECK(refusal(state, setup, LiftFloat{}).find("lower it first") != std::string::npos);
  CHECK(refusal(state, setup, Wait{-1}) == "Time runs forward only.");
}

TEST_CASE("Pouring conserves volume and substance and is written down") {
  const Setup setup = test::setup();
  const matter::Catalogue& catalogue = *setup.chemistry->catalogue;
  State state = begin(setup);
  const double before =
      matter::solute_mass_g(column::whole(state.vessels.at("specimen").column, catalogue), catalogue);
  REQUIRE(perform(state, setup, Pour{"specimen", "tube-3", 8, false}).done);
  const Vessel& tube = state.vessels.at("tube-3");
  CHECK(tube.column.volume_ml() == Approx(8));
  CHECK(state.vessels.at("specimen").column.volume_ml() == Approx(52));
  const double after =
      matter::solute_mass_g(column::whole(state.vessels.at("specimen").column, catalogue), catalogue) +
      matter::solute_mass_g(column::whole(tube.column, catalogue), catalogue);
  CHECK(after == Approx(before).epsilon(1e-9));
  REQUIRE(tube.trace.additions.size() == 1);
  CHECK(tube.trace.additions[0].what == "specimen");
  CHECK(tube.trace.additions[0].volume_ml == Approx(8));
}

TEST_CASE("Bare hands are noticed once and gloves end it") {
  const Setup setup = test::setup();
  State bare = begin(setup);
  CHECK(perform(bare, setup, Pour{"specimen", "tube-1", 5, false}).caution == "specimen");
  CHECK(perform(bare, setup, Pour{"specimen", "tube-1", 1, false}).caution.empty());
  CHECK(bare.handled_without_gloves_s == 0);
  State gloved = begin(setup);
  perform(gloved, setup, Protect{true, true});
  CHECK(perform(gloved, setup, Pour{"specimen", "tube-1", 5, false}).caution.empty());
  CHECK(gloved.handled_without_gloves_s < 0);
}

TEST_CASE("The thermometer is read to half a degree") {
  Setup setup = test::setup();
  setup.specimen.temperature_c = 30.3;
  State state = begin(setup);
  CHECK(perform(state, setup, Thermometer{"specimen"}).thermometer_c.value() == 30.5);
}

TEST_CASE("A cold specimen warms slowly to the room") {
  Setup setup = test::setup();
  setup.specimen.temperature_c = 4;
  State state = begin(setup);
  advance(state, setup, 300);
  const double after_5_min = column::mean_temperature_c(state.vessels.at("specimen").column);
  CHECK(after_5_min > 4.3);
  CHECK(after_5_min < 12);
  advance(state, setup, 7200);
  CHECK(column::mean_temperature_c(state.vessels.at("specimen").column) > 15);
}

TEST_CASE("The float reads what Archimedes says of the specimen") {
  Setup setup = test::setup();
  setup.urinometer.zero_error = 0.002;
  State state = begin(setup);
  perform(state, setup, Pour{"specimen", "jar", 35, false});
  REQUIRE(perform(state, setup, Float{"jar"}).done);
  advance(state, setup, 30);
  const matter::Catalogue& catalogue = *setup.chemistry->catalogue;
  const matter::Mixture urine = column::whole(state.vessels.at("jar").column, catalogue);
  const double density = matter::density_kg_m3(urine, catalogue);
  const double wanted = density * (1 + 25e-6 * (urine.temperature_c - 15)) / matter::water_density_kg_m3(15);
  // The weaker surface of urine lifts the float by less than a division.
  const double read = scale_view(state, setup)->reading_at_surface;
  CHECK(read - 0.002 > wanted);
  CHECK(read - 0.002 < wanted + 0.001);
  CHECK(refusal(state, setup, Pour{"jar", "tube-1", 2, false}) == "Lift the float out of the jar first.");
  perform(state, setup, LiftFloat{});
  CHECK_FALSE(scale_view(state, setup));
}

TEST_CASE("In distilled water the float shows its zero error, and the bench remembers it") {
  Setup setup = test::setup();
  setup.room_c = 15;
  setup.urinometer.zero_error = -0.001;
  State state = begin(setup);
  REQUIRE(perform(state, setup, Float{"water"}).done);
  advance(state, setup, 30);
  CHECK(scale_view(state, setup)->reading_at_surface == Approx(0.999).margin(1e-4));
  perform(state, setup, LiftFloat{});
  CHECK(state.float_last_in_water_reading == Approx(0.999).margin(1e-4));
}

TEST_CASE("A scant specimen leaves the float on the bottom") {
  const Setup setup = test::setup();
  State state = begin(setup);
  perform(state, setup, Pour{"specimen", "jar", 12, false});
  perform(state, setup, Float{"jar"});
  CHECK(state.floating->state.grounded);
  CHECK(scale_view(state, setup)->reading_at_surface > 1.025);
}

TEST_CASE("The nose finds acetone and the ammonia of a split urine, and nothing in a fresh one") {
  Setup setup = test::setup();
  State fresh = begin(setup);
  CHECK(perform(fresh, setup, Smell{"specimen"}).odours.empty());
  setup.specimen.mmol_per_l.emplace_back("acetone", 5);
  State ketotic = begin(setup);
  CHECK(perform(ketotic, setup, Smell{"specimen"}).odours == std::vector<std::string>{"fruity"});
  setup.specimen = test::setup().specimen;
  setup.specimen.mmol_per_l.emplace_back("ammonium", 200);
  setup.specimen.mmol_per_l.emplace_back("bicarbonate", 100);
  setup.specimen.target_ph = 9;
  State split = begin(setup);
  CHECK(perform(split, setup, Smell{"specimen"}).odours == std::vector<std::string>{"ammonia"});
}

TEST_CASE("The scene holds what can be seen and never the zero error") {
  Setup setup = test::setup();
  setup.urinometer.zero_error = 0.002;
  State state = begin(setup);
  perform(state, setup, Pour{"specimen", "jar", 35, false});
  const double level = look(state, setup, "jar", {}).level_mm;
  perform(state, setup, Float{"jar"});
  const Scene scene = make_scene(state, setup, {});
  CHECK(scene.vessels.size() == 15);
  REQUIRE(scene.floating);
  CHECK(scene.floating->urinometer_without_zero_error.zero_error == 0);
  CHECK(look(state, setup, "jar", {}).level_mm > level + 10);
  CHECK(scene.shelf == setup.reagents_out);
}
