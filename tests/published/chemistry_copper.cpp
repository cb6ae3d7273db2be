// Copper reduction against published stoichiometry and practice.
#include "tests/sim/chemistry_world.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace matula;
using namespace matula::tests;

namespace {

/// 5 mL reagent and 0.5 mL urine, five minutes in boiling water and five of cooling.
matter::Mixture boiled(const std::string& sugar, double g_per_dl, double urine_ml = 0.5) {
  matter::Mixture m =
      together(bottle("benedict", 5), urine(urine_ml, 6, {{sugar, mmol_per_l_of_g_per_dl(sugar, g_per_dl)}}));
  for (int temperature_c = 30; temperature_c < 100; temperature_c += 10) {
    hold(m, temperature_c, 8, 0.5, 100);
  }
  hold(m, 99, 250, 0.5, 100);
  for (int temperature_c = 90; temperature_c > 20; temperature_c -= 10) {
    hold(m, temperature_c, 40, 1);
  }
  return m;
}

double copper_left_mmol(const matter::Mixture& m) {
  return m.mmol[chemistry_world().id("copper_ii")];
}
double oxide_g(const matter::Mixture& m) {
  return m.populations[chemistry_world().solid("cuprous_oxide")].total_g();
}

} // namespace

TEST_CASE("5 mL of Benedict's reagent hold 0.346 mmol of copper") {
  // 17.3 g CuSO4.5H2O (249.69 g/mol) a litre.
  CHECK(copper_left_mmol(bottle("benedict", 5)) == Approx(0.3464).epsilon(0.001));
}

TEST_CASE("the copper is used up near 2 g/dL of glucose") {
  // Benedict's quantitative titre (25 mL of 18 g/L take 50 mg) exhausts 5 mL at 1.9 g/dL; 5.3 copper a
  // glucose, as in Fehling's titre, at 2.35.
  CHECK(copper_left_mmol(boiled("glucose", 1.5)) > 0.05);
  CHECK(copper_left_mmol(boiled("glucose", 2.6)) < 0.01);
}

TEST_CASE("the least sugar seen lies at 50-80 mg/dL") {
  // Practical manuals. 10 mg/L of the oxide in fine grains is a just visible haze (extinction near 0.3 over
  // 14 mm).
  CHECK(oxide_g(boiled("glucose", 0.04)) < 1e-6);
  CHECK(oxide_g(boiled("glucose", 0.085)) > 5e-5);
}

TEST_CASE("sucrose does not reduce copper, and every reducing sugar does") {
  const double plain = copper_left_mmol(boiled("sucrose", 0));
  CHECK(copper_left_mmol(boiled("sucrose", 5)) == Approx(plain).epsilon(1e-3));
  CHECK(oxide_g(boiled("sucrose", 5)) == 0);
  for (const char* sugar : {"glucose", "fructose", "galactose", "lactose", "maltose", "xylose"}) {
    INFO(sugar);
    CHECK(oxide_g(boiled(sugar, 1)) > 1e-3);
  }
}

TEST_CASE("a concentrated healthy urine leaves the reagent blue") {
  CHECK(oxide_g(boiled("creatinine", 0.1)) < 1e-6); // On top of the usual 9 mmol/L: 18 in all.
}

TEST_CASE("in warm water only pentose and vitamin C reduce") {
  // Pentoses reduce at 50-60 C within ten minutes; 1 g/dL of glucose does not show.
  const auto warmed = [](const std::string& what, double g_per_dl) {
    matter::Mixture m =
        together(bottle("benedict", 5), urine(0.5, 6, {{what, mmol_per_l_of_g_per_dl(what, g_per_dl)}}));
    hold(m, 55, 600, 1, 5);
    return oxide_g(m);
  };
  CHECK(warmed("glucose", 1) < 1e-6);
  CHECK(warmed("xylose", 1) > 1e-4);
  CHECK(warmed("ascorbate", 0.5) > 1e-4);
}

TEST_CASE("more glucose uses more copper and makes more oxide, smoothly") {
  double last_copper = 1;
  double last_oxide = -1;
  double largest_jump = 0;
  for (double g_per_dl = 0; g_per_dl <= 2.01; g_per_dl += 0.05) {
    const matter::Mixture m = boiled("glucose", g_per_dl);
    CHECK(copper_left_mmol(m) < last_copper);
    CHECK(oxide_g(m) >= last_oxide);
    largest_jump = last_oxide < 0 ? 0 : std::max(largest_jump, oxide_g(m) - last_oxide);
    last_copper = copper_left_mmol(m);
    last_oxide = oxide_g(m);
  }
  // 40 equal steps to 2 g/dL: none may be a cliff.
  CHECK(largest_jump < 2 * last_oxide / 40);
}
