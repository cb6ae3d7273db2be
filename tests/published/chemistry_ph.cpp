// pH of known solutions against published values.
#include "tests/sim/chemistry_world.hpp"

#include "sim/matter/ph.hpp"

#include <catch2/catch.hpp>

using namespace matula;
using namespace matula::tests;

namespace {

double ph_of(const Amounts& mmol_per_l) {
  return matter::ph(solution(10, mmol_per_l), chemistry_world().catalogue);
}
double ph_in_bottle(const std::string& key) {
  return matter::ph(bottle(key, 10), chemistry_world().catalogue);
}

} // namespace

TEST_CASE("primary pH standards at 25 C") {
  // R.G. Bates, Determination of pH, 2nd ed. 1973: the standards 0.025 m KH2PO4 + 0.025 m Na2HPO4 (6.865) and
  // 0.025 m NaHCO3 + 0.025 m Na2CO3 (10.012); 0.1 mol/L HCl 1.10; 0.1 m acetic acid + 0.1 m acetate 4.65.
  // Tolerance 0.03: the Davies equation's error at these ionic strengths.
  CHECK(ph_of({{"phosphate", 50}, {"sodium", 50}, {"potassium", 25}}) == Approx(6.865).margin(0.03));
  CHECK(ph_of({{"bicarbonate", 50}, {"sodium", 75}}) == Approx(10.012).margin(0.03));
  CHECK(ph_of({{"chloride", 100}}) == Approx(1.10).margin(0.03));
  CHECK(ph_of({{"acetate", 200}, {"sodium", 100}}) == Approx(4.65).margin(0.03));
}

TEST_CASE("Henderson and Hasselbalch, dilute") {
  // pH = pKa + log([base]/[acid]); at these concentrations activity shifts the pH by less than 0.02. Of 0.2
  // mmol/L acetic acid 0.015 ionises by itself: log(0.215/0.185) more.
  CHECK(ph_of({{"acetate", 0.4}, {"sodium", 0.2}}) == Approx(4.756 + 0.065).margin(0.02));
  CHECK(ph_of({{"ammonium", 1.0}, {"chloride", 0.5}}) == Approx(9.25).margin(0.03));
  CHECK(ph_of({{"bicarbonate", 1.1}, {"sodium", 1.0}}) == Approx(6.35 + 1.0).margin(0.03));
}

TEST_CASE("weak and strong acids from the bottle") {
  // 10 % v/v acetic acid is 1.75 mol/L: sqrt(Ka c) gives 2.26; handbooks print 2.4 for 1 mol/L (CRC,
  // approximate pH of acids: 1 N acetic acid 2.4, 0.1 N 2.9).
  CHECK(ph_in_bottle("acetic_acid_10") == Approx(2.3).margin(0.1));
  CHECK(ph_of({{"acetate", 1000}}) == Approx(2.4).margin(0.1));
  CHECK(ph_of({{"acetate", 100}}) == Approx(2.9).margin(0.1));
  // A strong monobasic acid of 0.118 mol/L with a second group of pKa 2.5: near 1.
  CHECK(ph_in_bottle("ssa_3") == Approx(1.0).margin(0.1));
  CHECK(ph_in_bottle("water") == Approx(7.0).margin(0.01));
}

TEST_CASE("apparent second constant of phosphate in urine is 6.8") {
  // Textbooks of physiology give 6.8 for plasma and urine, against 7.2 at zero ionic strength.
  const matter::Mixture m = urine(10, 6.8);
  const ChemistryWorld& world = chemistry_world();
  const matter::Acidity acidity = matter::acidity(m, world.catalogue);
  const matter::Species& phosphate = world.catalogue.species[world.id("phosphate")];
  const double acid = matter::form_fraction(phosphate, 1, acidity.ph, acidity.log_gamma);
  const double base = matter::form_fraction(phosphate, 2, acidity.ph, acidity.log_gamma);
  CHECK(base / acid == Approx(1.0).margin(0.15));
}
