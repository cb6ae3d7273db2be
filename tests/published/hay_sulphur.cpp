#include "tests/sim/bench_fixture.hpp"

#include "sim/instrument/sulphur.hpp"
#include "sim/matter/density.hpp"
#include "sim/matter/surface.hpp"

#include <catch2/catch.hpp>

using namespace matula;
using namespace matula::bench;

namespace {

Setup with_bile(double g_per_l) {
  Setup s = test::setup();
  s.tube_count = 2;
  if (g_per_l > 0) {
    s.specimen.mg_per_dl = {{"bile_salts", 100 * g_per_l}};
  }
  return s;
}

/// Share of the sulphur still afloat after so many seconds on 10 mL out of `from`.
double afloat(const Setup& setup, const std::string& from, double seconds, bool tapped = false) {
  State state = begin(setup);
  REQUIRE(perform(state, setup, Pour{from, "tube-1", 10}).done);
  REQUIRE(perform(state, setup, SprinkleSulphur{"tube-1"}).done);
  perform(state, setup, Wait{seconds});
  if (tapped) {
    perform(state, setup, Tap{"tube-1"});
  }
  perform(state, setup, Look{"tube-1", {}, 0});
  const auto looks = look(state, setup, "tube-1", {});
  REQUIRE(looks.powder);
  return looks.powder->floating_share;
}

double tension(const Setup& setup) {
  State state = begin(setup);
  return matter::surface_tension_mn_m(state.vessels.at("specimen").column.layers.back(),
                                      *setup.chemistry->catalogue);
}

} // namespace

TEST_CASE("Surface tensions: water, urine, bile salts") {
  // Water 72.7 mN/m at 20 °C: IAPWS. Normal urine 66 to 70, bile salts 50 to 55 at full strength: from
  // memory.
  CHECK(matter::water_surface_tension_mn_m(20) == Approx(72.74).margin(0.02));
  CHECK(tension(with_bile(0)) > 66);
  CHECK(tension(with_bile(0)) < 70);
  CHECK(tension(with_bile(2)) < 55);
  CHECK(tension(with_bile(2)) >= 44);
}

TEST_CASE("Hay: floats on water and on normal urine") {
  CHECK(afloat(with_bile(0), "water", 600, true) > 0.99);
  CHECK(afloat(with_bile(0), "specimen", 300, true) > 0.95);
}

TEST_CASE("Hay: sinks at once from 1 in 10 000, slowly or on tapping at 1 in 40 000") {
  // H. Varley 1967, from memory: 0.1 g/L at once; 0.025 g/L within 2 to 5 min, or on tapping.
  CHECK(afloat(with_bile(0.1), "specimen", 2) < 0.05);
  const Setup weak = with_bile(0.025);
  CHECK(afloat(weak, "specimen", 2) > 0.6);
  CHECK(afloat(weak, "specimen", 300) < 0.3);
  CHECK(afloat(weak, "specimen", 30, true) < 0.3);
  CHECK(afloat(with_bile(0.005), "specimen", 300) > 0.8);
}

TEST_CASE("Hay: what sank lies in the bed, nothing is lost; detergent deceives") {
  const Setup setup = with_bile(0.2);
  State state = begin(setup);
  perform(state, setup, Pour{"specimen", "tube-1", 10});
  perform(state, setup, SprinkleSulphur{"tube-1"});
  perform(state, setup, Wait{120});
  perform(state, setup, Look{"tube-1", {}, 0});
  const auto& catalogue = *setup.chemistry->catalogue;
  const auto id = catalogue.find_particle("sulphur").value();
  const auto& vessel = state.vessels.at("tube-1");
  CHECK(vessel.column.sediment.populations[id].total_g() ==
        Approx(setup.sulphur.pinch_mg / 1000).epsilon(0.02));
  CHECK(vessel.sulphur->floating() < 0.01);
  Setup soap = test::setup();
  soap.tube_count = 1;
  soap.reagents_out = {"detergent_1"};
  State washed = begin(soap);
  perform(washed, soap, Pour{"specimen", "tube-1", 10});
  perform(washed, soap, Dispense{"detergent_1", "tube-1", 1});
  perform(washed, soap, Mix{"tube-1"});
  perform(washed, soap, SprinkleSulphur{"tube-1"});
  perform(washed, soap, Wait{5});
  perform(washed, soap, Look{"tube-1", {}, 0});
  CHECK(washed.vessels.at("tube-1").sulphur->floating() < 0.1);
}

TEST_CASE("A small grain is carried at any angle but the smallest") {
  // Bond number of a 0.05 mm grain 0.0003: by weight alone it would sink only below 2 degrees.
  const instrument::Sulphur sulphur;
  CHECK(instrument::carried(sulphur, 4, 72.7));
  CHECK(instrument::carried(sulphur, 4, sulphur.critical_tension_mn_m + 0.1));
  CHECK_FALSE(instrument::carried(sulphur, 4, sulphur.critical_tension_mn_m));
  instrument::Sulphur coarse = sulphur;
  coarse.grain_radius_mm = 5;
  CHECK_FALSE(instrument::carried(coarse, 4, 72.7));
}
