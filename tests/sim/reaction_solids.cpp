// Laws that every row of the precipitation list obeys.
#include "tests/sim/chemistry_world.hpp"

#include "sim/matter/ph.hpp"
#include "sim/reaction/solids.hpp"
#include "sim/reaction/solubility.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <functional>
#include <map>

using namespace matula;
using namespace matula::tests;

namespace {

/// A portion in which the row's solid must form, with `dose` times the usual amount, and where it must go
/// back.
struct Recipe {
  std::function<matter::Mixture(double dose)> forming;
  double temperature_c = 22;
  std::function<matter::Mixture(matter::Mixture)> undone; ///< The change that dissolves the solid.
  double undone_c = 22;
};

matter::Mixture with_ssa(const std::string& species, double g_per_dl, double dose) {
  return together(urine(1, 6, {{species, dose * mmol_per_l_of_g_per_dl(species, g_per_dl)}}),
                  bottle("ssa_3", 3));
}

matter::Mixture with_acid(const std::string& reagent, double ml, const std::string& species, double dose) {
  return together(urine(1, 6, {{species, dose * mmol_per_l_of_g_per_dl(species, 0.1)}}), bottle(reagent, ml));
}

matter::Mixture made_alkaline(matter::Mixture mixture) {
  return together(std::move(mixture), bottle("sodium_hydroxide_10", 2));
}

matter::Mixture left_alone(matter::Mixture mixture) {
  return mixture;
}

/// One recipe a row: a new row without one fails the test below.
std::map<std::string, Recipe> recipes() {
  std::map<std::string, Recipe> list;
  for (const char* protein :
       {"albumin", "globulin", "light_chain", "haemoglobin", "methaemoglobin", "myoglobin", "metmyoglobin"}) {
    list[std::string(protein) + "_ssa"] = {[=](double dose) { return with_ssa(protein, 0.1, dose); }, 22,
                                           nullptr, 22};
  }
  for (const auto& [acid, reagent] : {std::pair{"picrate", "esbach"}, {"trichloroacetate", "tca_12_5"}}) {
    const std::string bottle_key = reagent;
    for (const std::string protein :
         {"albumin", "globulin", "light_chain", "haemoglobin", "methaemoglobin"}) {
      list[protein + "_" + acid] = {[=](double dose) { return with_acid(bottle_key, 1, protein, dose); }, 22,
                                    nullptr, 22};
    }
    list[std::string("denatured_") + acid] = {
        [=](double dose) { return with_acid(bottle_key, 1, "protein_unfolded", dose); }, 22, made_alkaline,
        22};
  }
  list["denatured_ssa"] = {[](double dose) { return with_ssa("protein_unfolded", 0.1, dose); }, 22,
                           made_alkaline, 22};
  const auto with_nitric_acid = [](const std::string& protein) {
    return [=](double dose) {
      return together(urine(1, 6, {{protein, dose * mmol_per_l_of_g_per_dl(protein, 0.1)}}),
                      bottle("nitric_acid_conc", 1));
    };
  };
  for (const char* protein :
       {"albumin", "globulin", "light_chain", "haemoglobin", "methaemoglobin", "myoglobin", "metmyoglobin"}) {
    list[std::string(protein) + "_nitric"] = {with_nitric_acid(protein), 22, nullptr, 22};
  }
  list["denatured_nitric"] = {
      with_nitric_acid("protein_unfolded"), 22,
      [](matter::Mixture m) { return together(std::move(m), bottle("sodium_hydroxide_10", 20)); }, 22};
  list["ammonium_sulphate"] = {
      [](double dose) {
        return solution(1, {{"ammonium", 9400 * dose}, {"sulphate", 4700 * dose}});
      },
      22, [](matter::Mixture m) { return together(std::move(m), bottle("water", 1)); }, 22};
  list["ferric_phosphate"] = {
      [](double dose) {
        return together(urine(1, 6, {{"phosphate", 20 * dose}}), bottle("ferric_chloride_10", 0.05));
      },
      22, [](matter::Mixture m) { return together(std::move(m), bottle("nitric_acid_10", 1)); }, 22};
  list["denatured_heat"] = {
      [](double dose) {
        return urine(1, 5, {{"protein_unfolded", dose * mmol_per_l_of_g_per_dl("protein_unfolded", 0.1)}});
      },
      90, made_alkaline, 90};
  list["light_chain_heat"] = {
      [](double dose) {
        return urine(1, 5, {{"light_chain", dose * mmol_per_l_of_g_per_dl("light_chain", 0.5)}});
      },
      57, left_alone, 99};
  list["calcium_phosphate"] = {
      [](double dose) {
        return urine(1, 7.6, {{"calcium", dose}});
      },
      98, [](matter::Mixture m) { return together(std::move(m), bottle("acetic_acid_10", 0.1)); }, 98};
  list["sodium_urate"] = {[](double dose) {
                            return urine(1, 5.6, {{"urate", 4 * dose}, {"sodium", 40}});
                          },
                          4, left_alone, 45};
  list["uric_acid"] = {
      [](double dose) {
        return together(urine(1, 5.6, {{"urate", 6 * dose}}), bottle("hydrochloric_acid_6n", 0.03));
      },
      22, made_alkaline, 22};
  list["triple_phosphate"] = {
      [](double dose) {
        return urine(1, 8.5, {{"ammonium", 100 * dose}});
      },
      22, [](matter::Mixture m) { return together(std::move(m), bottle("acetic_acid_10", 0.2)); }, 22};
  list["thymol"] = {[](double dose) { return urine(1, 6, {{"thymol", 20 * dose}}); }, 22, made_alkaline, 22};
  list["drug_acid"] = {[](double dose) {
                         return together(urine(1, 6, {{"drug", 8 * dose}}), bottle("ssa_3", 3));
                       },
                       22, made_alkaline, 22};
  list["contrast_acid"] = {
      [](double dose) {
        return together(urine(1, 6, {{"contrast_medium", 55 * dose}}), bottle("ssa_3", 3));
      },
      22, made_alkaline, 22};
  list["cuprous_oxide"] = {
      [](double dose) {
        matter::Mixture m = bottle("benedict", 5);
        m.mmol[chemistry_world().id("copper_i")] += 0.05 * dose;
        return m;
      },
      100, [](matter::Mixture m) { return together(std::move(m), bottle("acetic_acid_glacial", 3)); }, 22};
  list["barium_sulphate"] = {
      [](double dose) {
        return together(urine(2, 6, {{"sulphate", 10 * dose}}), bottle("barium_chloride_10", 1));
      },
      22, nullptr, 22};
  list["bilirubin_on_barium_sulphate"] = {
      [](double dose) {
        matter::Mixture m = urine(1, 6, {{"bilirubin", 0.005 * dose}});
        m.populations.of(chemistry_world().solid("barium_sulphate")).grams[0] = 2e-3;
        return m;
      },
      22, [](matter::Mixture m) { return together(std::move(m), bottle("fouchet", 1)); }, 22};
  list["guaiac_resin"] = {[](double dose) {
                            return together(urine(5, 6), solution(1, {{"guaiac_resin", 30 * dose}}));
                          },
                          22, made_alkaline, 22};
  return list;
}

reaction::Network alone(const reaction::Precipitation& row) {
  return {{}, {row}, {}, {}};
}

void react_alone(matter::Mixture& m, const reaction::Precipitation& row, double temperature_c, double seconds,
                 double step_s = 1) {
  m.temperature_c = temperature_c;
  for (double t = 0; t < seconds; t += step_s) {
    reaction::react(m, alone(row), chemistry_world().catalogue, step_s, 0.4);
  }
}

double solid_g(const matter::Mixture& m, const reaction::Precipitation& row) {
  return m.populations[row.solid].total_g();
}

/// Mol of the row's n-th ingredient in solution and in the solid.
double ingredient_mmol(const matter::Mixture& m, const reaction::Precipitation& row, std::size_t n) {
  const auto& [id, count] = row.formula[n];
  return m.mmol[id] +
         1000 * count * solid_g(m, row) / reaction::solid_molar_mass_g(row, chemistry_world().catalogue);
}

} // namespace

TEST_CASE("every precipitation row forms its solid, loses nothing, and goes back where it says so") {
  const auto list = recipes();
  for (const reaction::Precipitation& row : chemistry_world().network.precipitations) {
    INFO(row.key);
    REQUIRE(list.count(row.key) == 1);
    const Recipe& recipe = list.at(row.key);
    matter::Mixture m = recipe.forming(1);
    const matter::Mixture before = m;
    react_alone(m, row, recipe.temperature_c, 900);
    CHECK(solid_g(m, row) > 1e-6);
    for (std::size_t n = 0; n < row.formula.size(); ++n) {
      CHECK(m.mmol[row.formula[n].first] >= 0);
      CHECK(ingredient_mmol(m, row, n) == Approx(ingredient_mmol(before, row, n)).epsilon(1e-9));
    }
    REQUIRE((recipe.undone != nullptr) == row.dissolves);
    if (row.dissolves) {
      const double formed_g = solid_g(m, row);
      matter::Mixture back = recipe.undone(m);
      react_alone(back, row, recipe.undone_c, 1800);
      CHECK(solid_g(back, row) < 0.02 * formed_g);
    }
  }
}

TEST_CASE("every solid of a salt or an oxide leaves as many protons behind as its ions' charge asks") {
  const ChemistryWorld& world = chemistry_world();
  for (const reaction::Precipitation& row : world.network.precipitations) {
    INFO(row.key);
    double charge = 0;
    bool protein = false;
    for (const auto& [id, count] : row.formula) {
      charge += count * world.catalogue.species[id].protonated_charge;
      protein = protein || world.catalogue.species[id].molar_mass_g_per_mol > 5000;
    }
    if (!protein) { // Proteins come down with the precipitant's ions, which are not counted.
      CHECK(row.protons == Approx(charge));
    }
  }
}

TEST_CASE("every solid: more dose never gives less, and short steps give what long ones give") {
  const auto list = recipes();
  for (const reaction::Precipitation& row : chemistry_world().network.precipitations) {
    INFO(row.key);
    const Recipe& recipe = list.at(row.key);
    double last_g = -1;
    for (const double dose : {0.0, 0.25, 0.5, 1.0, 2.0, 4.0}) {
      matter::Mixture m = recipe.forming(dose);
      react_alone(m, row, recipe.temperature_c, 300);
      CHECK(solid_g(m, row) >= last_g);
      last_g = solid_g(m, row);
    }
    matter::Mixture coarse = recipe.forming(1);
    matter::Mixture fine = coarse;
    react_alone(coarse, row, recipe.temperature_c, 120, 0.5);
    react_alone(fine, row, recipe.temperature_c, 120, 0.125);
    CHECK(solid_g(coarse, row) == Approx(solid_g(fine, row)).epsilon(0.01)); // The solver's promise.
  }
}

TEST_CASE("a fresh urine at rest stays as it is") {
  for (const double ph : {5.0, 6.0, 7.0}) {
    matter::Mixture m = urine(
        5, ph,
        {{"albumin", 0.03}, {"light_chain", 0.2}, {"glucose", 20}, {"drug", 5}, {"contrast_medium", 20}});
    const matter::Mixture before = m;
    hold(m, 22, 3600, 10);
    for (const auto& [kind, population] : m.populations.present()) {
      CHECK(population.total_g() == 0);
    }
    CHECK(m.mmol[chemistry_world().id("albumin")] ==
          Approx(before.mmol[chemistry_world().id("albumin")]).epsilon(1e-4));
    CHECK(m.mmol[chemistry_world().id("glucose")] == before.mmol[chemistry_world().id("glucose")]);
  }
}

TEST_CASE("an alkaline buffer can eat the acid of too little sulfosalicylic acid") {
  const reaction::Network& network = chemistry_world().network;
  const auto cloud_g = [&](const Amounts& extra, double acid_ml) {
    matter::Mixture m = together(urine(3, 8.5, extra), bottle("ssa_3", acid_ml));
    for (int i = 0; i < 600; ++i) {
      reaction::react(m, network, chemistry_world().catalogue, 1, 0.4);
    }
    return m.populations[chemistry_world().solid("ssa_protein")].total_g();
  };
  const Amounts protein = {{"albumin", 0.02}};
  const Amounts buffered = {{"albumin", 0.02}, {"bicarbonate", 130}};
  CHECK(cloud_g(protein, 1) > 1e-3);
  CHECK(cloud_g(buffered, 1) < 0.02 * cloud_g(protein, 1));
  CHECK(cloud_g(buffered, 9) > 1e-3);
}

TEST_CASE("nuclei of copper oxide follow the speed of formation, and growth keeps their number") {
  const ChemistryWorld& world = chemistry_world();
  const matter::ParticleId solid = world.solid("cuprous_oxide");
  const matter::ParticleKind& kind = world.catalogue.particles[solid];
  matter::Population population;
  reaction::deposit(population, kind, 1e-6, 0, 1e14, 5);
  const double number = reaction::number_per_m3(population, kind, 5);
  CHECK(number == Approx(1e14).epsilon(1e-6));
  reaction::deposit(population, kind, 1e-4, 0, 1e13, 5);
  CHECK(population.total_g() == Approx(1.01e-4).epsilon(1e-14));
  CHECK(reaction::number_per_m3(population, kind, 5) == Approx(number).epsilon(1e-8)); // All but the trifle.
}
