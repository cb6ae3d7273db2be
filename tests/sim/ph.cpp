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

TEST_CASE("the search for the pH does not go to and fro between two bends of the curve") {
  // Found by the random mixing test: Newton's steps from 6.994 led to 3.197 and back.
  const matter::Mixture mixture = solution(1, {{"creatinine", 0.0987},
                                               {"sodium", 101.274},
                                               {"potassium", 0.279},
                                               {"ammonium", 118.617},
                                               {"calcium", 3.890},
                                               {"magnesium", 0.058},
                                               {"chloride", 123.307},
                                               {"sulphate", 1.654},
                                               {"bicarbonate", 22.515},
                                               {"citrate", 14.032},
                                               {"acetate", 56.102},
                                               {"beta_hydroxybutyrate", 0.976},
                                               {"branched_keto_acids", 9.348},
                                               {"sulfosalicylate", 6.348},
                                               {"copper_ii", 1.654}});
  const matter::Catalogue& catalogue = chemistry_world().catalogue;
  const double ph = matter::ph(mixture, catalogue);
  CHECK(std::abs(matter::charge_excess_molar(mixture, catalogue, ph)) < 1e-5);
  CHECK(ph == Approx(5.35).margin(0.05));
}
