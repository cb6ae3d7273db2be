// Acetoacetate and acetone in a standing specimen.
#include "ageing_support.hpp"

#include "sim/ageing/exchange.hpp"
#include "sim/reaction/rate.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace matula;
using namespace matula::test;

namespace {

const ageing::Volatile& acetone_row() {
  for (const ageing::Volatile& row : world().ageing.volatiles) {
    if (row.species == id("acetone")) {
      return row;
    }
  }
  throw std::runtime_error("acetone is not volatile");
}

/// Little acetoacetate in a strong buffer, so that the pH stays.
matter::Mixture buffered(double ph) {
  specimen::Specimen s;
  s.volume_ml = 100;
  s.target_ph = ph;
  s.mmol_per_l = {{"phosphate", 60}, {"acetate", 60}, {"sodium", 40}, {"acetoacetate", 0.01}};
  return specimen::make_liquid(s, world().catalogue);
}

double half_life_h(double temperature_c, double ph) {
  const matter::Mixture before = buffered(ph);
  const double hours = temperature_c > 90 ? 0.01 : 10;
  const matter::Mixture after = kept(before, temperature_c, hours, shut());
  REQUIRE(test::ph(after) == Approx(ph).margin(0.01));
  return hours * std::log(2) / std::log(before.mmol[id("acetoacetate")] / after.mmol[id("acetoacetate")]);
}

} // namespace

TEST_CASE("Acetoacetate goes by itself as slowly as chemists measured") {
  // Free acid half gone in 140 min and ion in 130 h at 37 °C (pKa 3.58), with the activation energies of R.W.
  // Hay, M.A. Bond, Aust. J. Chem. 20 (1967) 1823: this table follows from them. Rounded to three figures;
  // 2 % for that and for the constants as the rows print them.
  struct Printed {
    double temperature_c, ph, hours;
  };
  for (const Printed& p : {Printed{4, 5, 4000},
                           {20, 5, 393},
                           {25, 5, 200},
                           {37, 5, 43.3},
                           {4, 6, 9220},
                           {20, 6, 941},
                           {25, 6, 485},
                           {37, 6, 108},
                           {4, 7, 10660},
                           {20, 7, 1100},
                           {25, 7, 569},
                           {37, 7, 127}}) {
    INFO(p.temperature_c << " C, pH " << p.ph);
    CHECK(half_life_h(p.temperature_c, p.ph) == Approx(p.hours).epsilon(0.02));
  }
}

TEST_CASE("Boiled in acid for minutes, acetoacetate is gone") {
  // The same constants at 100 °C: 11.7 min at pH 6, 4.2 min at pH 5, 1.8 min at pH 4.5.
  CHECK(half_life_h(100, 6) * 60 == Approx(11.7).epsilon(0.03));
  CHECK(half_life_h(100, 5) * 60 == Approx(4.2).epsilon(0.03));
  CHECK(half_life_h(100, 4.5) * 60 == Approx(1.8).epsilon(0.03));
}

TEST_CASE("A day on the bench takes two hundredths of the acetoacetate by chemistry alone") {
  // A.H. Free, H.M. Free: that it soon turns into acetone with loss of the reaction is a fallacy (from
  // memory).
  specimen::Specimen s = plain_urine(6.0);
  s.mmol_per_l.emplace_back("acetoacetate", 10);
  const matter::Mixture after = kept(s, 20, 24, shut());
  CHECK(mmol_per_l(after, "acetoacetate") == Approx(9.82).margin(0.05));
}

TEST_CASE("Bacteria take the acetoacetate of an old specimen") {
  specimen::Specimen s = plain_urine(6.0);
  s.mmol_per_l.emplace_back("acetoacetate", 10);
  s.resting_per_ml = {{"escherichia", 1e4}};
  // 0.1-0.5 /h for 1e8/mL at 37 °C: from memory. Grown after half a day, they have most of it by a day.
  CHECK(mmol_per_l(kept(s, 37, 24, shut()), "acetoacetate") < 1.5);
  CHECK(mmol_per_l(kept(s, 4, 24, shut()), "acetoacetate") > 9.9);
}

TEST_CASE("Acetone's share in air over water") {
  // K_aw = 1/(HRT), H = 0.27 mol/m3/Pa and 5500 K: R. Sander, Atmos. Chem. Phys. 15 (2015) 4399. Two figures.
  const ageing::Volatile& row = acetone_row();
  CHECK(ageing::air_water_ratio(row, 4) == Approx(4.0e-4).epsilon(0.02));
  CHECK(ageing::air_water_ratio(row, 20) == Approx(1.11e-3).epsilon(0.01));
  CHECK(ageing::air_water_ratio(row, 25) == Approx(1.49e-3).epsilon(0.01));
  CHECK(ageing::air_water_ratio(row, 37) == Approx(2.9e-3).epsilon(0.02));
  CHECK(ageing::air_water_ratio(row, 60) == Approx(9e-3).epsilon(0.05));
}

TEST_CASE("An open beaker loses its acetone in hours, a closed one keeps it") {
  specimen::Specimen s = plain_urine(6.0);
  s.mmol_per_l.emplace_back("acetone", 5);
  ageing::Keeping beaker;
  beaker.depth_mm = 50;
  beaker.lux = 0;
  const auto half_life = [&](double temperature_c) {
    const double hours = 2;
    const double left = mmol_per_l(kept(s, temperature_c, hours, beaker), "acetone") / 5;
    return hours * std::log(2) / -std::log(left);
  };
  // Film theory with still air 1.8 mm/s and still water 6 um/s, 5 cm deep: 6.5 h at 20 °C, 15 h at 4 °C,
  // 3.4 h at 37 °C; the same arithmetic in round figures, hence 10 %.
  CHECK(half_life(20) == Approx(6.5).epsilon(0.1));
  CHECK(half_life(4) == Approx(15).epsilon(0.1));
  CHECK(half_life(37) == Approx(3.4).epsilon(0.1));
  // Equal volumes of air and liquid under a lid: loss K/(1 + K), 0.11 % at 20 °C and 0.29 % at 37 °C.
  const auto lost = [&](double temperature_c) {
    return 1 - mmol_per_l(kept(s, temperature_c, 72, shut()), "acetone") / 5;
  };
  CHECK(lost(20) == Approx(0.0011).epsilon(0.03));
  CHECK(lost(37) == Approx(0.0029).epsilon(0.03));
}
