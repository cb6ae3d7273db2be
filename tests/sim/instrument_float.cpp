#include "engine/assets/readers.hpp"

#include "sim/instrument/urinometer.hpp"
#include "sim/matter/density.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace matula;
using namespace matula::instrument;

namespace {

Urinometer shipped() {
  scenario::Problems problems;
  const std::string folder = std::string(MATULA_SOURCE_DIR) + "/assets";
  assets::World world;
  world.catalogue = assets::load_catalogue(folder, problems);
  assets::read_instruments(folder + "/instruments.toml", world, problems);
  REQUIRE(problems.empty());
  return world.urinometer;
}

Bath water(double t) {
  return {matter::water_density_kg_m3(t), t, matter::water_surface_tension_mn_m(t), 40, 24.5};
}

double settled(const Urinometer& u, const Bath& bath, bool wiped = true, bool spun = true,
               Chance chance = {}) {
  Float state = lower(u, bath, wiped, spun, chance);
  advance(state, u, bath, 60);
  return read_scale(u, state, bath).reading_at_surface;
}

} // namespace

TEST_CASE("The float reads 1.000 in distilled water at its calibration temperature") {
  const Urinometer u = shipped();
  CHECK(settled(u, water(u.calibration_c)) == Approx(1.0).margin(1e-9));
}

TEST_CASE("Its reading falls as the water warms") {
  const Urinometer u = shipped();
  // Kell 1975 and ISO 1768 give -0.0018 at 25 °C; the weaker surface then lifts the float by 0.0003.
  CHECK(settled(u, water(25)) == Approx(1 - 0.0018 + 0.0003).margin(0.0002));
  CHECK(settled(u, water(37)) < settled(u, water(25)));
}

TEST_CASE("A denser liquid reads its relative density") {
  const Urinometer u = shipped();
  Bath bath = water(15);
  bath.density_kg_m3 *= 1.020;
  CHECK(settled(u, bath) == Approx(1.020).margin(1e-6));
}

TEST_CASE("Zero error shifts every reading by itself") {
  Urinometer u = shipped();
  u.zero_error = 0.002;
  CHECK(settled(u, water(15)) == Approx(1.002).margin(1e-9));
}

TEST_CASE("A weaker surface lets the float rise") {
  const Urinometer u = shipped();
  Bath bath = water(15);
  bath.surface_tension_mn_m -= 10;
  const double shift = settled(u, bath) - 1;
  // Weight against pull: pi d 10 mN/m over g is 12.8 mg of 7.8 g.
  CHECK(shift == Approx(0.00164).margin(0.0001));
}

TEST_CASE("Air on an unwiped bulb and the wall mislead by what practice knows") {
  const Urinometer u = shipped();
  for (const double chance : {0.0, 0.5, 1.0}) {
    const double bubbles = settled(u, water(15), false, true, {0, 0, chance}) - 1;
    CHECK(bubbles >= 0.00095);
    CHECK(bubbles <= 0.0031);
    const double wall = settled(u, water(15), true, false, {chance, chance, 0}) - 1;
    CHECK(std::abs(wall) >= 0.0019);
    CHECK(std::abs(wall) <= 0.0052);
  }
}

TEST_CASE("Spinning frees the float from the wall") {
  const Urinometer u = shipped();
  const Bath bath = water(15);
  Float state = lower(u, bath, true, false, {1, 1, 0});
  advance(state, u, bath, 20);
  CHECK(state.touches_wall);
  spin(state, u);
  CHECK_FALSE(state.touches_wall);
  advance(state, u, bath, 60);
  CHECK(read_scale(u, state, bath).reading_at_surface == Approx(1.0).margin(1e-6));
}

TEST_CASE("It needs about 15 mL and stands on the bottom in less") {
  const Urinometer u = shipped();
  Bath bath = water(15);
  bath.density_kg_m3 *= 1.020;
  const double needed = needed_volume_ml(u, bath);
  CHECK(needed > 13); // 15 mL or a little more: common practice
  CHECK(needed < 20);
  bath.volume_ml = needed + 0.5;
  CHECK_FALSE(lower(u, bath, true, true, {}).grounded);
  bath.volume_ml = needed - 2;
  CHECK(lower(u, bath, true, true, {}).grounded);
  CHECK(settled(u, bath) > 1.022);
}

TEST_CASE("Bobbing dies away and does not depend on the steps") {
  const Urinometer u = shipped();
  const Bath bath = water(15);
  Float whole = lower(u, bath, true, true, {});
  Float halves = whole;
  CHECK(std::abs(read_scale(u, whole, bath).reading_at_surface - 1) > 0.001);
  advance(whole, u, bath, 1.0);
  advance(halves, u, bath, 0.25);
  advance(halves, u, bath, 0.75);
  CHECK(halves.depth_offset_mm == Approx(whole.depth_offset_mm).margin(1e-9));
  CHECK(halves.speed_mm_s == Approx(whole.speed_mm_s).margin(1e-9));
  advance(whole, u, bath, 15);
  CHECK(std::abs(whole.depth_offset_mm) < 0.05);
}

TEST_CASE("Meniscus and parallax have their size and sign") {
  const Urinometer u = shipped();
  const Bath bath = water(15);
  Float state = lower(u, bath, true, true, {});
  advance(state, u, bath, 60);
  const ScaleView view = read_scale(u, state, bath);
  // The liquid climbs about 2 mm, two to five divisions towards 1.000 and beyond.
  CHECK(view.reading_at_surface - view.reading_at_meniscus_top > 0.002);
  CHECK(view.reading_at_surface - view.reading_at_meniscus_top < 0.005);
  CHECK(view.parallax_per_mm * 10 > 0.0003);
  CHECK(view.parallax_per_mm * 10 < 0.002);
}

TEST_CASE("Surface tension of water") {
  // IAPWS R1-76(2014) table: 72.74 at 20 °C, 58.91 at 100 °C.
  CHECK(matter::water_surface_tension_mn_m(20) == Approx(72.74).margin(0.02));
  CHECK(matter::water_surface_tension_mn_m(100) == Approx(58.91).margin(0.02));
}
