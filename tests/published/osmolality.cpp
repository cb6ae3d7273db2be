// Osmolality against freezing points: a kilogram of water freezes 1.860 K lower for each osmol.
#include "sim/matter/osmolality.hpp"
#include "solution.hpp"

#include <catch2/catch.hpp>

using namespace matula;

namespace {

struct Frozen {
  const char* name;
  double per_cent; ///< Mass per cent.
  double g_ml;
  double molar_mass;
  double depression_k;
  std::vector<std::pair<std::string, double>> ions;
};

// CRC Handbook of Chemistry and Physics, concentrative properties of aqueous solutions: freezing points from
// memory, densities as in density_solutions.cpp.
const Frozen crc[] = {
    {"sodium chloride", 0.5, 1.0018, 58.443, 0.299, {{"sodium", 1}, {"chloride", 1}}},
    {"sodium chloride", 1, 1.0053, 58.443, 0.593, {{"sodium", 1}, {"chloride", 1}}},
    {"sodium chloride", 2, 1.0125, 58.443, 1.186, {{"sodium", 1}, {"chloride", 1}}},
    {"potassium chloride", 1, 1.0046, 74.551, 0.463, {{"potassium", 1}, {"chloride", 1}}},
    {"potassium chloride", 2, 1.0110, 74.551, 0.919, {{"potassium", 1}, {"chloride", 1}}},
    {"ammonium chloride", 1, 1.0014, 53.492, 0.645, {{"ammonium", 1}, {"chloride", 1}}},
    {"glucose", 2, 1.0058, 180.155, 0.214, {{"glucose", 1}}},
    {"glucose", 5, 1.0175, 180.155, 0.550, {{"glucose", 1}}},
    {"urea", 1, 1.0007, 60.055, 0.311, {{"urea", 1}}},
    {"urea", 2, 1.0033, 60.055, 0.620, {{"urea", 1}}},
};
constexpr double kelvin_per_osmol = 1.860;

} // namespace

TEST_CASE("Osmolality of single solutes follows their freezing points") {
  for (const Frozen& row : crc) {
    CAPTURE(row.name, row.per_cent);
    const matter::Mixture mixture = test::by_mass(row.per_cent, row.g_ml, row.molar_mass, row.ions);
    const double printed = row.depression_k / kelvin_per_osmol * 1000;
    // Two per cent: one pair of constants for all salts, none for uncharged solutes.
    CHECK(matter::osmolality_mosm_per_kg(mixture, test::catalogue()) == Approx(printed).epsilon(0.02));
  }
}

TEST_CASE(
    "Physiological saline and glucose for infusion have the osmolality printed on the bottle's leaflet") {
  // 9 g/L of sodium chloride: 286 mOsm/kg by freezing point (common practice); 50 g/L of glucose: 278 mmol/L.
  const matter::Mixture saline = test::solution({{"sodium", 0.154}, {"chloride", 0.154}});
  CHECK(matter::osmolality_mosm_per_kg(saline, test::catalogue()) == Approx(286).margin(4));
  const matter::Mixture glucose = test::solution({{"glucose", 0.2775}});
  CHECK(matter::osmolality_mosm_per_kg(glucose, test::catalogue()) == Approx(287).margin(5));
}

TEST_CASE("An empty vessel has no osmolality and water has none") {
  CHECK(matter::osmolality_mosm_per_kg(matter::empty_mixture(test::catalogue()), test::catalogue()) == 0);
  CHECK(matter::osmolality_mosm_per_kg(test::solution({}), test::catalogue()) == 0);
}
