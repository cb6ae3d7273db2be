#include "engine/scoring/slips.hpp"

#include <catch2/catch.hpp>

using namespace matula::scoring;

namespace {

/// Zero error +0.001, 6 degrees above the float's temperature, protein 2 and glucose 1 g/dL: 1.026
/// becomes 1.017.
GravityBasis worked_case() {
  GravityBasis basis;
  basis.zero_error = 0.001;
  basis.temperature_c = 26;
  basis.calibration_c = 20;
  basis.physical_temperature_correction = 0.0014;
  basis.protein_g_dl = {{2, 2}};
  basis.glucose_g_dl = {{1, 1}};
  basis.protein_physical = 0.00269;
  basis.glucose_physical = 0.0038;
  return basis;
}

std::vector<StepVerdict> mark(double reading, double zero, double temperature, double protein,
                              double glucose) {
  return mark_chain(reading, gravity_steps(worked_case(), {zero, temperature, protein, glucose, glucose}));
}

std::vector<bool> right(const std::vector<StepVerdict>& verdicts) {
  std::vector<bool> all;
  for (const auto& verdict : verdicts) {
    all.push_back(verdict.right);
  }
  return all;
}

} // namespace

TEST_CASE("All lines right") {
  CHECK(right(mark(1.026, 1.025, 1.027, 1.021, 1.017)) == std::vector<bool>{true, true, true, true, true});
}

TEST_CASE("A misreading is not charged again in the lines that follow from it") {
  CHECK(right(mark(1.030, 1.029, 1.031, 1.025, 1.021)) == std::vector<bool>{true, true, true, true, true});
}

TEST_CASE("A turned sign is charged once and named") {
  const auto verdicts = mark(1.026, 1.025, 1.023, 1.017, 1.013);
  CHECK(right(verdicts) == std::vector<bool>{true, false, true, true, true});
  CHECK(verdicts[1].slip.find("sign") != std::string::npos);
  CHECK(verdicts[1].expected_line == Approx(1.027));
}

TEST_CASE("Two slips that cancel are both seen") {
  // Read 1.024 for 1.026 and left out the zero error: the final value is off by 0.001 only.
  const auto verdicts = mark(1.024, 1.024, 1.026, 1.020, 1.016);
  CHECK(right(verdicts) == std::vector<bool>{false, true, true, true, true});
  CHECK(verdicts[0].slip.find("left out") != std::string::npos);
}

TEST_CASE("The physical correction is as good as the rule") {
  auto basis = worked_case();
  basis.temperature_c = 35;
  basis.physical_temperature_correction = 0.0037; // The rule gives 0.005.
  const auto rule = mark_chain(1.026, gravity_steps(basis, {1.025, 1.030, {}, {}, {}}));
  const auto physics = mark_chain(1.026, gravity_steps(basis, {1.025, 1.0287, {}, {}, {}}));
  const auto neither = mark_chain(1.026, gravity_steps(basis, {1.025, 1.027, {}, {}, {}}));
  CHECK(rule[1].right);
  CHECK(physics[1].right);
  CHECK_FALSE(neither[1].right);
}

TEST_CASE("The figure of the other solute is named") {
  auto basis = worked_case();
  basis.glucose_g_dl = {{3, 3}};
  const auto verdicts = mark_chain(1.026, gravity_steps(basis, {1.025, 1.027, 1.021, 1.012, {}}));
  CHECK_FALSE(verdicts[3].right);
  CHECK(verdicts[3].slip.find("0.003 for each g/dL is the figure for protein") != std::string::npos);
}

TEST_CASE("A factor of ten is named") {
  const auto verdicts = mark(1.026, 1.025, 1.045, 1.039, 1.035);
  CHECK(right(verdicts) == std::vector<bool>{true, false, true, true, true});
  CHECK(verdicts[1].slip.find("ten times") != std::string::npos);
}

TEST_CASE("One degree for three is named") {
  const auto verdicts = mark(1.026, 1.025, 1.031, 1.025, 1.021);
  CHECK(verdicts[1].slip.find("every degree") != std::string::npos);
}

TEST_CASE("A line worked from an earlier line is named as such") {
  // The protein line was taken from the reading, not from the line before.
  auto basis = worked_case();
  basis.zero_error = 0.004;
  const auto verdicts = mark_chain(1.030, gravity_steps(basis, {1.026, 1.028, 1.024, {}, {}}));
  CHECK(verdicts[1].right);
  CHECK_FALSE(verdicts[2].right);
  CHECK(verdicts[2].slip.find("earlier line") != std::string::npos);
}

TEST_CASE("Only a final value: right, or one slip found in it") {
  const auto fine = mark_chain(1.026, gravity_steps(worked_case(), {{}, {}, {}, {}, 1.017}));
  CHECK(right(fine) == std::vector<bool>{true, true, true, true, true});
  const auto flipped = mark_chain(1.026, gravity_steps(worked_case(), {{}, {}, {}, {}, 1.013}));
  CHECK(right(flipped) == std::vector<bool>{true, false, true, true, true});
  const auto wild = mark_chain(1.026, gravity_steps(worked_case(), {{}, {}, {}, {}, 1.050}));
  CHECK(right(wild) == std::vector<bool>{false, false, false, false, false});
}

TEST_CASE("Bare corrections are taken as well as lines") {
  const auto verdicts =
      mark_chain(1.026, gravity_steps(worked_case(), {-0.001, 0.002, -0.006, -0.004, 1.017}));
  CHECK(right(verdicts) == std::vector<bool>{true, true, true, true, true});
}

TEST_CASE("An empty line costs nothing when there is nothing to correct, and nothing follows from nothing") {
  GravityBasis plain;
  plain.temperature_c = 15;
  const auto verdicts = mark_chain(1.020, gravity_steps(plain, {{}, {}, {}, {}, 1.020}));
  CHECK(right(verdicts) == std::vector<bool>{true, true, true, true, true});
  const auto unwritten = mark_chain(1.020, gravity_steps(plain, {}));
  CHECK(right(unwritten) == std::vector<bool>{false, false, false, false, false});
}

TEST_CASE("A published worked example: 1.022 at 23 °C on a float for 20 °C is 1.023") {
  GravityBasis basis;
  basis.temperature_c = 23;
  basis.calibration_c = 20;
  basis.physical_temperature_correction = 0.0006;
  const auto verdicts = mark_chain(1.022, gravity_steps(basis, {{}, 1.023, {}, {}, 1.023}));
  CHECK(verdicts[1].right);
  CHECK(verdicts[4].right);
}
