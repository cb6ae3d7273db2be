// Strong solutions of the ring tests, and a salt that is dissolved until some of it stays.
#include "solution.hpp"

#include "sim/matter/ph.hpp"

#include <catch2/catch.hpp>

using namespace matula;

TEST_CASE("ammonia water is as much lighter than water as the CRC table prints") {
  // CRC Handbook of Chemistry and Physics, concentrative properties of aqueous solutions, 20 °C, from memory:
  // g/mL at per cent by mass. The salt's ion would make it nearly as heavy as water.
  const std::pair<double, double> printed[] = {{5, 0.977}, {10, 0.958}, {20, 0.923}, {25, 0.907}};
  for (const auto& [per_cent, g_ml] : printed) {
    CAPTURE(per_cent);
    const auto mixture = test::by_mass(per_cent, g_ml, 17.031, {{"ammonium", 1}});
    CHECK(matter::density_kg_m3(mixture, test::catalogue()) / 1000 == Approx(g_ml).margin(0.004));
  }
}

TEST_CASE("ammonium sulphate solutions weigh what the CRC table prints, up to saturation") {
  // CRC Handbook, 20 °C, from memory: 10 % 1.057, 20 % 1.115, 30 % 1.172, 40 % 1.228 g/mL. The growth of
  // volumes is a limiting law carried to 12 mol/L of ionic strength: 2 % off at the most.
  const std::pair<double, double> printed[] = {{10, 1.057}, {20, 1.115}, {30, 1.172}, {40, 1.228}};
  for (const auto& [per_cent, g_ml] : printed) {
    CAPTURE(per_cent);
    const auto mixture = test::by_mass(per_cent, g_ml, 132.14, {{"ammonium", 2}, {"sulphate", 1}});
    CHECK(matter::density_kg_m3(mixture, test::catalogue()) / 1000 == Approx(g_ml).margin(0.022));
  }
}
