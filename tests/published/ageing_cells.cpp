// Cells and casts of a standing specimen.
#include "ageing_support.hpp"

#include "sim/ageing/rates.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace matula;
using namespace matula::test;

namespace {

double k_per_h(const std::string& key, double ph, double specific_gravity, double temperature_c) {
  for (const ageing::Cell& row : world().ageing.cells) {
    if (row.key == key) {
      return ageing::lysis_per_h(row, ph, specific_gravity, temperature_c);
    }
  }
  throw std::runtime_error("no cell " + key);
}

double lost(double per_h, double hours) {
  return 1 - std::exp(-per_h * hours);
}

} // namespace

TEST_CASE("White cells in the refrigerator are lost as counted") {
  // Anderson, Diagn. Microbiol. Infect. Dis. 18 (1994) 79, n = 30: 19 % in 4 h at pH 8.5, 57 % in 4 h and 16
  // % in 2 h at pH 9.0, no significant loss at pH 8 and below. The law is fitted to all three: 12 points
  // apart.
  CHECK(lost(k_per_h("leucocytes", 8.5, 1.015, 4), 4) == Approx(0.19).margin(0.03));
  CHECK(lost(k_per_h("leucocytes", 9.0, 1.015, 4), 4) == Approx(0.57).margin(0.12));
  CHECK(lost(k_per_h("leucocytes", 9.0, 1.015, 4), 2) == Approx(0.16).margin(0.12));
  CHECK(lost(k_per_h("leucocytes", 8.0, 1.015, 4), 4) < 0.10);
}

TEST_CASE("Red cells last in acid, concentrated urine and burst in thin, alkaline, warm urine") {
  // Direction: Korean J. Urol. 18 (1977) 111. Figures of the fitted law, rounded.
  CHECK(lost(k_per_h("erythrocytes", 5, 1.025, 37), 12) == Approx(0.08).margin(0.01));
  CHECK(std::log(2) / k_per_h("erythrocytes", 8, 1.005, 37) == Approx(0.5).margin(0.05));
  CHECK(std::log(2) / k_per_h("erythrocytes", 7, 1.008, 20) == Approx(6).margin(0.3));
  for (const double ph : {5.0, 6.0, 7.0}) {
    CHECK(k_per_h("erythrocytes", ph, 1.012, 22) > k_per_h("leucocytes", ph, 1.012, 22));
  }
}

TEST_CASE("Hyaline casts are gone in two hours at pH 8") {
  // Common practice; waxy casts outlast all others.
  CHECK(lost(k_per_h("hyaline_casts", 8, 1.005, 22), 2) > 0.8);
  CHECK(lost(k_per_h("hyaline_casts", 5.5, 1.020, 22), 2) < 0.06);
  CHECK(k_per_h("cellular_casts", 7, 1.012, 22) == Approx(0.5 * k_per_h("hyaline_casts", 7, 1.012, 22)));
  CHECK(k_per_h("granular_casts", 7, 1.012, 22) == Approx(0.3 * k_per_h("hyaline_casts", 7, 1.012, 22)));
  CHECK(k_per_h("waxy_casts", 7, 1.012, 22) == Approx(0.1 * k_per_h("hyaline_casts", 7, 1.012, 22)));
}

TEST_CASE("Burst red cells give up their haemoglobin, 30 pg each") {
  // 29-30 pg a cell: common value.
  specimen::Specimen s = plain_urine(7.5);
  s.cells_per_ul = {{"erythrocytes", 1000}};
  const matter::Mixture before = specimen::make_liquid(s, world().catalogue);
  const matter::Mixture after = kept(before, 37, 6, shut());
  const double burst_per_ml = per_ml(before, "erythrocytes") - per_ml(after, "erythrocytes");
  const double haem_mmol_l = mmol_per_l(after, "haemoglobin") + mmol_per_l(after, "methaemoglobin");
  REQUIRE(burst_per_ml > 1e5);
  const double pg = haem_mmol_l * 64500 * 1e-6 / burst_per_ml * 1e12; // mmol/L * g/mol = mg/L
  CHECK(pg == Approx(30).margin(1.5));
}
