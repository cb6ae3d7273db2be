// The solution of the ageing equations against an independent solver, and what it must keep.
#include "ageing_cvode.hpp"
#include "ageing_support.hpp"

#include "sim/ageing/stiff.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace matula;
using namespace matula::test;

namespace {

/// Everything at once: sugar, ketones, pigments, blood, pus, casts, and organisms of four kinds.
specimen::Specimen crowded(double ph) {
  specimen::Specimen s = plain_urine(ph);
  for (const auto& [key, mmol] : {std::pair<const char*, double>{"glucose", 20},
                                  {"nitrate", 1},
                                  {"acetoacetate", 8},
                                  {"acetone", 3},
                                  {"bicarbonate", 4},
                                  {"homogentisate", 2}}) {
    s.mmol_per_l.emplace_back(key, mmol);
  }
  s.mg_per_dl = {{"albumin", 60}, {"bilirubin", 3}, {"urobilinogen", 3}, {"haemoglobin", 5}};
  s.cells_per_ul = {{"erythrocytes", 800}, {"leucocytes", 900}, {"hyaline_casts", 1}, {"granular_casts", 1}};
  s.resting_per_ml = {{"escherichia", 1e4}, {"candida", 1e3}};
  s.growing_per_ml = {{"proteus", 1e5}, {"enterococcus", 1e3}};
  return s;
}

void compare(const specimen::Specimen& specimen, double temperature_c, double hours,
             const ageing::Keeping& keeping) {
  const auto& w = world();
  matter::Mixture liquid = specimen::make_liquid(specimen, w.catalogue);
  liquid.temperature_c = temperature_c;
  ageing::Gas gas;
  gas.under_lid_mmol_per_l.assign(w.ageing.volatiles.size(), 0.0);
  ageing::System system(liquid, w.catalogue, w.chemistry, w.ageing, keeping, gas);
  ageing::System again(liquid, w.catalogue, w.chemistry, w.ageing, keeping, gas);
  std::vector<double> ours = system.start();
  ageing::integrate({[&](const double* y, double* change) { system.change(y, change); },
                     [&](const double* y, double* partial) { system.jacobian(y, partial); }},
                    ours, hours, 0.02, {1e-10, 1e-7}); // the equations are compared, not the steps
  const std::vector<double> theirs = by_cvode(again, hours, 1e-10, 1e-14);
  REQUIRE(ours.size() == theirs.size());
  for (std::size_t i = 0; i < ours.size(); ++i) {
    INFO("component " << i << " " << again.name(i) << " of " << ours.size() << " at " << temperature_c
                      << " C after " << hours << " h");
    // What is below 1e-7 mmol/L (a hundredth of a nanomol a litre) or 0.1 cell/mL counts as nothing.
    CHECK(ours[i] == Approx(theirs[i]).epsilon(1e-3).margin(1e-7));
  }
}

} // namespace

TEST_CASE("Every component agrees with SUNDIALS CVODE within a thousandth") {
  ageing::Keeping open;
  ageing::Keeping window;
  window.lux = 10000;
  for (const double ph : {5.2, 6.5, 7.8}) {
    for (const double temperature_c : {4.0, 22.0, 37.0}) {
      compare(crowded(ph), temperature_c, 24, open);
    }
  }
  compare(crowded(6.0), 30, 72, shut());
  compare(crowded(6.0), 22, 6, window);
}

TEST_CASE("The steps a specimen is aged with are fine enough: a hundredth, a nanomol a litre, a cell a "
          "millilitre") {
  const auto& w = world();
  for (const double ph : {5.2, 7.8}) {
    for (const double temperature_c : {4.0, 22.0, 37.0}) {
      for (const double hours : {2.0, 24.0}) {
        matter::Mixture liquid = specimen::make_liquid(crowded(ph), w.catalogue);
        liquid.temperature_c = temperature_c;
        ageing::Gas gas;
        gas.under_lid_mmol_per_l.assign(w.ageing.volatiles.size(), 0.0);
        ageing::System system(liquid, w.catalogue, w.chemistry, w.ageing, {}, gas);
        const ageing::StiffSystem stiff{
            [&](const double* y, double* change) { system.change(y, change); },
            [&](const double* y, double* partial) { system.jacobian(y, partial); }};
        std::vector<double> usual = system.start();
        ageing::integrate(stiff, usual, hours, 0.5, {});
        std::vector<double> fine = system.start();
        ageing::integrate(stiff, fine, hours, 0.02, {1e-10, 1e-7});
        for (std::size_t i = 0; i < usual.size(); ++i) {
          INFO(system.name(i) << " (" << i << ") at " << temperature_c << " C after " << hours << " h, pH "
                              << ph);
          CHECK(usual[i] == Approx(fine[i]).epsilon(1e-2).margin(1e-6));
        }
      }
    }
  }
}

TEST_CASE("The derivatives handed to the solver are those of the right-hand side") {
  const auto& w = world();
  specimen::Specimen specimen = crowded(6.3);
  specimen.cells_per_ul.clear(); // The specific gravity they look at counts as steady within a step.
  matter::Mixture liquid = specimen::make_liquid(specimen, w.catalogue);
  liquid.temperature_c = 33;
  ageing::Gas gas;
  ageing::System system(liquid, w.catalogue, w.chemistry, w.ageing, {}, gas);
  const std::size_t n = system.size();
  std::vector<double> y = system.start();
  std::vector<double> partial(n * n);
  for (double& each : y) {
    each += 1; // Away from corners at zero.
  }
  system.jacobian(y.data(), partial.data());
  std::vector<double> up(n);
  std::vector<double> down(n);
  for (std::size_t j = 0; j < n; ++j) {
    const double step = 1e-2 * y[j]; // The pH is known to 1e-6 only.
    std::vector<double> at = y;
    at[j] += step;
    system.change(at.data(), up.data());
    at[j] -= 2 * step;
    system.change(at.data(), down.data());
    for (std::size_t i = 0; i < n; ++i) {
      INFO("d" << i << "/d" << j);
      // The pH's own derivative leaves the activities as they are: up to a quarter of what goes through it.
      const double scale = std::abs(up[i]) + 1e-3;
      CHECK(partial[i * n + j] == Approx((up[i] - down[i]) / (2 * step)).epsilon(0.25).margin(1e-2 * scale));
    }
  }
}

TEST_CASE("Nitrogen, carbon and mass are kept up to what the world took or gave") {
  const auto& w = world();
  for (const double temperature_c : {4.0, 22.0, 37.0}) {
    for (const bool open : {true, false}) {
      const matter::Mixture before = specimen::make_liquid(crowded(6.2), w.catalogue);
      ageing::Keeping keeping;
      keeping.open = open;
      ageing::Gas gas;
      const matter::Mixture after = kept(before, temperature_c, 24, keeping, &gas);
      INFO(temperature_c << " C, " << (open ? "open" : "closed"));
      const auto gone = [&](const std::string& key) {
        for (std::size_t i = 0; i < w.ageing.volatiles.size(); ++i) {
          if (w.ageing.volatiles[i].species == id(key)) {
            return gas.to_air_mmol[i];
          }
        }
        return 0.0;
      };
      const auto sum = [](const matter::Mixture& m,
                          std::initializer_list<std::pair<const char*, double>> parts) {
        double total = 0;
        for (const auto& [key, atoms] : parts) {
          total += atoms * m.mmol[id(key)];
        }
        return total;
      };
      const auto nitrogen = [&](const matter::Mixture& m) {
        return sum(m, {{"urea", 2}, {"ammonium", 1}, {"nitrate", 1}, {"nitrite", 1}});
      };
      CHECK(nitrogen(after) + gone("ammonium") == Approx(nitrogen(before)).epsilon(1e-6));
      const auto carbon = [&](const matter::Mixture& m) {
        return sum(m, {{"glucose", 6},
                       {"lactate", 3},
                       {"acetate", 2},
                       {"ethanol", 2},
                       {"acetoacetate", 4},
                       {"acetone", 3},
                       {"bicarbonate", 1},
                       {"urea", 1}});
      };
      CHECK(carbon(after) + gone("bicarbonate") + 3 * gone("acetone") ==
            Approx(carbon(before)).epsilon(1e-6));

      double left_g = matter::solute_mass_g(after, w.catalogue) - matter::solute_mass_g(before, w.catalogue);
      constexpr double g_per_mg = 1e-3;
      const auto count = [&](matter::SpeciesId species, double mmol) {
        const matter::Species& s = w.catalogue.species[species];
        left_g += mmol * (s.molar_mass_g_per_mol - s.protonated_charge * 1.008) * g_per_mg;
      };
      for (std::size_t i = 0; i < w.ageing.volatiles.size(); ++i) {
        count(w.ageing.volatiles[i].species, gas.to_air_mmol[i]);
      }
      for (matter::SpeciesId s = 0; s < after.mmol.size(); ++s) {
        left_g -=
            (after.mmol[s] - before.mmol[s]) * w.catalogue.species[s].protonated_charge * 1.008 * g_per_mg;
      }
      // Molar masses are given to five figures: 2e-5 of what has changed, here some grams a litre.
      CHECK(left_g == Approx((gas.water_mmol * 18.015 + gas.oxygen_mmol * 31.998) * g_per_mg).margin(3e-5));
    }
  }
}

TEST_CASE("A day in one piece is a day in many") {
  const matter::Mixture before = specimen::make_liquid(crowded(6.2), world().catalogue);
  const matter::Mixture once = kept(before, 25, 24, shut());
  ageing::Gas gas;
  matter::Mixture often = before;
  for (int i = 0; i < 48; ++i) {
    often = kept(often, 25, 0.5, shut(), &gas);
  }
  for (const char* key : {"glucose", "urea", "ammonium", "acetoacetate", "nitrite", "bilirubin"}) {
    INFO(key);
    CHECK(mmol_per_l(often, key) == Approx(mmol_per_l(once, key)).epsilon(2e-3).margin(1e-6));
  }
  for (const char* key : {"escherichia", "proteus", "candida", "erythrocytes", "leucocytes"}) {
    INFO(key);
    CHECK(per_ml(often, key) == Approx(per_ml(once, key)).epsilon(2e-3));
  }
}

TEST_CASE("The same call gives the same bits") {
  const matter::Mixture before = specimen::make_liquid(crowded(6.2), world().catalogue);
  CHECK(kept(before, 30, 10).mmol == kept(before, 30, 10).mmol);
}
