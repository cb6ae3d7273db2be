#include "sim/instrument/correction.hpp"

#include <catch2/catch.hpp>

using namespace matula::instrument;

namespace {

ToCorrect at(double temperature_c, double zero = 0, double protein = 0, double glucose = 0) {
  return {zero, temperature_c, protein, glucose};
}

WrittenRule rule_for(double calibration_c) {
  WrittenRule rule;
  rule.calibration_c = calibration_c;
  return rule;
}

Physical physics_for(double calibration_c) {
  Physical physical;
  physical.calibration_c = calibration_c;
  return physical;
}

} // namespace

TEST_CASE("The written rule: 0.001 for 3 degrees, 0.003 for protein, 0.004 for glucose") {
  // Worked examples: A. Kassa, M. Wolde, B. Kibret, Urinalysis lecture notes 2002, p. 33.
  CHECK(to_division(1.022 + rule_correction(rule_for(20), at(23)).sum()) == Approx(1.023));
  CHECK(to_division(1.036 + rule_correction(rule_for(20), at(26, 0, 1, 2)).sum()) == Approx(1.027));
  CHECK(rule_correction(rule_for(15), at(15, 0.002)).sum() == Approx(-0.002));
  CHECK(rule_correction(rule_for(20), at(14)).temperature == Approx(-0.002));
}

TEST_CASE("The same examples by physics agree to the division") {
  CHECK(1.022 + physical_correction(physics_for(20), 1.022, at(23)).sum() == Approx(1.0226).margin(0.0002));
  CHECK(1.036 + physical_correction(physics_for(20), 1.036, at(26, 0, 1, 2)).sum() ==
        Approx(1.0271).margin(0.0006));
}

TEST_CASE("A float in warm or cold water misreads as water and glass expand") {
  // Worked out apart from this program from Kell 1975 and 25e-6 /K (ISO 1768): what must be added, water, to
  // 0.0001.
  struct Point {
    double calibration_c, t, add;
  };
  const Point points[] = {{15, 20, 0.00077}, {15, 25, 0.0018},  {15, 30, 0.0031},  {15, 37, 0.0052},
                          {20, 4, -0.0014},  {20, 10, -0.0013}, {20, 15, -0.0008}, {20, 25, 0.0010},
                          {20, 30, 0.0023},  {20, 37, 0.0045}};
  for (const Point& p : points) {
    CAPTURE(p.calibration_c, p.t);
    // Water reads 1 - add.
    CHECK(physical_correction(physics_for(p.calibration_c), 1 - p.add, at(p.t)).temperature ==
          Approx(p.add).margin(0.0001));
  }
}

TEST_CASE("Protein and glucose by physics lie just under the rule") {
  const Corrections c = physical_correction(physics_for(20), 1.030, at(20, 0, 1, 1));
  CHECK(c.protein == Approx(-0.0027).margin(0.0001));  // partial volume of serum albumin 0.733 mL/g
  CHECK(c.glucose == Approx(-0.0038).margin(0.00005)); // CRC Handbook
  CHECK(c.temperature == Approx(0).margin(1e-12));
}

TEST_CASE("Halves are rounded up") {
  CHECK(to_division(1.0225) == Approx(1.023));
  CHECK(to_division(1.0224) == Approx(1.022));
}
