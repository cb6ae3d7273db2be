#include "solution.hpp"

#include "sim/instrument/refractometer.hpp"
#include "sim/matter/refraction.hpp"

#include <catch2/catch.hpp>

using namespace matula;

namespace {

using Ions = std::vector<std::pair<std::string, double>>;

struct Printed {
  const char* name;
  double per_cent;
  double g_ml;
  double index;
  double molar_mass;
  Ions ions;
};

const Ions nacl{{"sodium", 1}, {"chloride", 1}};
const Ions kcl{{"potassium", 1}, {"chloride", 1}};
const Ions nh4cl{{"ammonium", 1}, {"chloride", 1}};
const Ions urea{{"urea", 1}};
const Ions glucose{{"glucose", 1}};

// CRC Handbook of Chemistry and Physics, 102nd ed. 2021, concentrative properties of aqueous solutions, 20
// °C, sodium D line against air.
const Printed crc[] = {
    {"sodium chloride", 0.5, 1.0018, 1.3339, 58.443, nacl},
    {"sodium chloride", 1, 1.0053, 1.3347, 58.443, nacl},
    {"sodium chloride", 2, 1.0125, 1.3365, 58.443, nacl},
    {"sodium chloride", 3, 1.0196, 1.3383, 58.443, nacl},
    {"sodium chloride", 5, 1.0340, 1.3418, 58.443, nacl},
    {"sodium chloride", 10, 1.0707, 1.3505, 58.443, nacl},
    {"potassium chloride", 1, 1.0046, 1.3343, 74.551, kcl},
    {"potassium chloride", 2, 1.0110, 1.3357, 74.551, kcl},
    {"potassium chloride", 5, 1.0304, 1.3398, 74.551, kcl},
    {"ammonium chloride", 1, 1.0014, 1.3349, 53.492, nh4cl},
    {"ammonium chloride", 2, 1.0045, 1.3369, 53.492, nh4cl},
    {"ammonium chloride", 5, 1.0138, 1.3426, 53.492, nh4cl},
    {"urea", 0.5, 0.9995, 1.3337, 60.055, urea},
    {"urea", 1, 1.0007, 1.3344, 60.055, urea},
    {"urea", 2, 1.0033, 1.3358, 60.055, urea},
    {"urea", 5, 1.0111, 1.3401, 60.055, urea},
    {"urea", 10, 1.0248, 1.3476, 60.055, urea},
    {"glucose", 0.5, 1.0001, 1.3337, 180.155, glucose},
    {"glucose", 1, 1.0020, 1.3344, 180.155, glucose},
    {"glucose", 2, 1.0058, 1.3358, 180.155, glucose},
    {"glucose", 5, 1.0175, 1.3402, 180.155, glucose},
    {"glucose", 10, 1.0375, 1.3477, 180.155, glucose},
    {"fructose", 10, 1.0385, 1.3476, 180.155, {{"fructose", 1}}},
    {"lactose", 10, 1.0390, 1.3484, 342.296, {{"lactose", 1}}},
    {"sucrose", 1, 1.0021, 1.3344, 342.296, {{"sucrose", 1}}},
    {"sucrose", 5, 1.0178, 1.3403, 342.296, {{"sucrose", 1}}},
    {"sodium dihydrogen phosphate", 1, 1.0056, 1.3343, 119.977, {{"sodium", 1}, {"phosphate", 1}}},
    {"disodium hydrogen phosphate", 1, 1.0082, 1.3349, 141.959, {{"sodium", 2}, {"phosphate", 1}}},
    {"disodium hydrogen phosphate", 2, 1.0180, 1.3368, 141.959, {{"sodium", 2}, {"phosphate", 1}}},
    {"sodium sulphate", 1, 1.0071, 1.3345, 142.043, {{"sodium", 2}, {"sulphate", 1}}},
    {"sodium sulphate", 2, 1.0161, 1.3360, 142.043, {{"sodium", 2}, {"sulphate", 1}}},
    {"sodium bicarbonate", 1, 1.0054, 1.3344, 84.007, {{"sodium", 1}, {"bicarbonate", 1}}},
};

double index_of(const matter::Mixture& mixture) {
  return matter::refractive_index(mixture, test::catalogue());
}

/// Reading of a refractometer without error on a prism at `prism_c`.
double shown(matter::Mixture mixture, double prism_c = 20, bool compensated = true) {
  instrument::Refractometer r;
  r.compensated = compensated;
  mixture.temperature_c = prism_c;
  return instrument::read_edge(r, index_of(mixture), prism_c, 0).reading;
}

/// Change of the reading and of the relative density for a gram in a decilitre.
double rise_per_g_dl(const std::string& species, double molar_mass) {
  return shown(test::solution({{species, 10 / molar_mass}})) - shown(test::solution({}));
}

} // namespace

TEST_CASE("Water's index by temperature") {
  // IAPWS R9-97 and the CRC Handbook, sodium D line against air: 1.33339, 1.33299, 1.33250, 1.33194.
  CHECK(matter::water_index(15) == Approx(1.33339).margin(0.00002));
  CHECK(matter::water_index(20) == Approx(1.33299).margin(0.00002));
  CHECK(matter::water_index(25) == Approx(1.33250).margin(0.00002));
  CHECK(matter::water_index(30) == Approx(1.33194).margin(0.00003));
}

TEST_CASE("Indices of single solutes follow the CRC table") {
  for (const Printed& row : crc) {
    CAPTURE(row.name, row.per_cent);
    const matter::Mixture mixture = test::by_mass(row.per_cent, row.g_ml, row.molar_mass, row.ions);
    // The table is rounded to 0.0001; the density law adds what it is off by (0.0005 g/mL at 5 % make
    // 0.0002). Beyond 5 % one apparent volume no longer serves, and phosphate's is that of urine at pH 6.
    const bool phosphate = row.ions.back().first == "phosphate";
    const double margin = phosphate ? 0.0012 : row.per_cent > 5 ? 0.0008 : 0.0003;
    CHECK(index_of(mixture) == Approx(row.index).margin(margin));
  }
}

TEST_CASE("The two usual check solutions stand where they should on a urine scale") {
  // S.K. Strasinger and M.S. Di Lorenzo 2014, from memory: NaCl 5 % 1.022 and sucrose 9 % 1.034, each ±
  // 0.001.
  CHECK(shown(test::solution({})) == Approx(1.000).margin(0.0002));
  CHECK(shown(test::by_mass(5, 1.0340, 58.443, nacl)) == Approx(1.022).margin(0.001));
  CHECK(shown(test::by_mass(9, 1.0340, 342.296, {{"sucrose", 1}})) == Approx(1.034).margin(0.001));
}

TEST_CASE("Protein, sugar and contrast medium on the refractometer") {
  // Arithmetic from dn/dc over the slope of the scale: protein 0.0047, glucose 0.0036 per g/dL; textbooks
  // still print the float's 0.003 and 0.004.
  CHECK(rise_per_g_dl("albumin", 66500) == Approx(0.0047).margin(0.0002));
  CHECK(rise_per_g_dl("glucose", 180.156) == Approx(0.0036).margin(0.0001));
  // Contrast medium drives a urine far beyond 1.035 and off the end of the scale (Sumner, Br. J. Urol. 1964:
  // 1.092, 1.104 by float): 80 mmol/L in a plain urine.
  const double with =
      shown(test::solution({{"urea", 0.2}, {"sodium", 0.1}, {"chloride", 0.1}, {"contrast_medium", 0.2}}));
  CHECK(with > 1.050);
  // Linear in its concentration (Feeney, JAVMA 176 (1980) 1378): half of it makes half the rise, within 2 %.
  const double water = shown(test::solution({}));
  const double half = shown(test::solution({{"contrast_medium", 0.05}})) - water;
  const double whole = shown(test::solution({{"contrast_medium", 0.1}})) - water;
  CHECK(whole / half == Approx(2).epsilon(0.02));
}

TEST_CASE("A first morning urine reads a little lower than on the float") {
  // Textbooks and the sum of CRC indices: 0.002 to 0.003 lower at a relative density of 1.020 (worked out
  // here: 0.0071/0.395 = 0.018 against 0.0207). Composition, mmol/L: Na 130, K 60, NH4 40, urea 380,
  // creatinine 13.
  const matter::Mixture urine = test::solution({{"sodium", 0.130},
                                                {"potassium", 0.060},
                                                {"ammonium", 0.040},
                                                {"urea", 0.380},
                                                {"creatinine", 0.013},
                                                {"phosphate", 0.028},
                                                {"sulphate", 0.022},
                                                {"chloride", 0.162},
                                                {"calcium", 0.0036},
                                                {"magnesium", 0.00325},
                                                {"other_organics", 0.030}});
  const double by_weight = matter::density_kg_m3(urine, test::catalogue()) / matter::water_density_kg_m3(20);
  CHECK(shown(urine) == Approx(1.0185).margin(0.0015));
  CHECK(by_weight - shown(urine) > 0.0005);
  CHECK(by_weight - shown(urine) < 0.004);
}

TEST_CASE("Compensation takes water's change out; without it a warm prism reads low") {
  for (const double prism_c : {15.0, 25.0, 30.0}) {
    CAPTURE(prism_c);
    CHECK(shown(test::solution({}), prism_c) == Approx(1.000).margin(0.0003));
    // A solution changes a little more than water: within half a division.
    CHECK(shown(test::by_mass(5, 1.0340, 58.443, nacl), prism_c) ==
          Approx(shown(test::by_mass(5, 1.0340, 58.443, nacl))).margin(0.001));
  }
  // Water at 30 °C is 0.00105 lower in index than at 20 °C: 0.0027 on the scale.
  CHECK(shown(test::solution({}), 30, false) == Approx(0.9973).margin(0.0003));
}

TEST_CASE("A cloudy film blurs the edge of the shadow") {
  const instrument::Refractometer r;
  CHECK(instrument::read_edge(r, 1.34, 20, 0).spread == Approx(0));
  const auto hazy = instrument::read_edge(r, 1.34, 20, 0.05);
  const auto cloudy = instrument::read_edge(r, 1.34, 20, 0.5);
  CHECK(hazy.spread < cloudy.spread);
  CHECK(hazy.contrast > cloudy.contrast);
  CHECK(hazy.reading == Approx(cloudy.reading));
}
