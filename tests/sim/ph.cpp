// Laws of the charge balance.
#include "tests/sim/chemistry_world.hpp"

#include "sim/matter/ph.hpp"

#include <catch2/catch.hpp>

using namespace matula;
using namespace matula::tests;

TEST_CASE("the pH found is the one at which charge balances") {
  const matter::Catalogue& catalogue = chemistry_world().catalogue;
  for (const double wanted : {4.6, 5.5, 6.0, 7.0, 8.0, 8.8}) {
    const matter::Mixture m = urine(10, wanted, {{"albumin", 0.1}});
    const double found = matter::ph(m, catalogue);
    CHECK(found == Approx(wanted).margin(1e-3)); // The helper's four passes.
    CHECK(matter::charge_excess_molar(m, catalogue, found) == Approx(0).margin(1e-6));
  }
}

TEST_CASE("acid always lowers the pH and alkali raises it, in every urine and reagent") {
  const matter::Catalogue& catalogue = chemistry_world().catalogue;
  for (const double start : {5.0, 6.5, 8.5}) {
    double last = 15;
    for (int drop = 0; drop <= 40; ++drop) {
      const matter::Mixture m =
          together(urine(5, start, {{"albumin", 0.1}}), bottle("acetic_acid_10", 0.05 * drop));
      CHECK(matter::ph(m, catalogue) < last);
      last = matter::ph(m, catalogue);
    }
    last = 0;
    for (int drop = 0; drop <= 40; ++drop) {
      const matter::Mixture m = together(urine(5, start), bottle("sodium_hydroxide_10", 0.05 * drop));
      CHECK(matter::ph(m, catalogue) > last);
      last = matter::ph(m, catalogue);
    }
  }
}

TEST_CASE("the forms of an acid add up to one and cross at its pKa") {
  const ChemistryWorld& world = chemistry_world();
  const matter::Species& phosphate = world.catalogue.species[world.id("phosphate")];
  for (double ph = 0; ph <= 14; ph += 0.5) {
    double sum = 0;
    for (std::size_t lost = 0; lost <= phosphate.pka.size(); ++lost) {
      sum += matter::form_fraction(phosphate, lost, ph);
    }
    CHECK(sum == Approx(1).epsilon(1e-12));
  }
  CHECK(matter::form_fraction(phosphate, 1, 7.2) == Approx(matter::form_fraction(phosphate, 2, 7.2)));
}

TEST_CASE("ammonia is smelled in a split urine and not in a fresh one") {
  const ChemistryWorld& world = chemistry_world();
  const matter::SpeciesId ammonium = world.id("ammonium");
  const auto free_mmol_per_l = [&](double ph, double extra) {
    const matter::Mixture m = urine(10, ph, {{"ammonium", extra}});
    return 1000 * matter::odorous_molar(m, world.catalogue, ammonium, matter::ph(m, world.catalogue));
  };
  CHECK(free_mmol_per_l(6, 170) < 0.2);
  CHECK(free_mmol_per_l(8.5, 90) > 10);
}
