// Control rules against their printed definitions, worked sequences and rates of false rejection.
#include "engine/quality/float_check.hpp"
#include "engine/quality/float_mornings.hpp"
#include "engine/quality/multirules.hpp"
#include "engine/quality/ordinal.hpp"
#include "sim/optics/random.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace matula;
using quality::RangeWording;
using quality::Rule;
using quality::Run;

namespace {

/// Standard normal deviate (Box and Muller 1958).
double normal(optics::Stream& stream) {
  const double u = 1 - stream.next();
  return std::sqrt(-2 * std::log(u)) * std::cos(2 * 3.14159265358979323846 * stream.next());
}

/// Share above z of a standard normal.
double tail(double z) {
  return 0.5 * std::erfc(z / std::sqrt(2.0));
}

std::vector<Run> single(const std::vector<double>& values) {
  std::vector<Run> runs;
  for (const double value : values) {
    runs.push_back({value});
  }
  return runs;
}

/// Share of fresh, faultless records of `runs` runs of `materials` whose last run breaks the rule.
double false_rate(Rule rule, std::size_t runs, std::size_t materials, int records,
                  RangeWording wording = RangeWording::EitherSide) {
  optics::Stream stream(99);
  int broken = 0;
  for (int i = 0; i < records; ++i) {
    std::vector<Run> record(runs, Run(materials));
    for (Run& run : record) {
      for (double& z : run) {
        z = normal(stream);
      }
    }
    broken += quality::breaks(rule, record, wording) ? 1 : 0;
  }
  return static_cast<double>(broken) / records;
}

/// Three standard errors of a rate counted in so many records.
double error(double rate, int records) {
  return 3 * std::sqrt(rate * (1 - rate) / records);
}

} // namespace

TEST_CASE("Worked sequences break the rules they are printed for") {
  using quality::broken_rules;
  // J.O. Westgard et al. 1981, definitions from memory; the sequences are our own.
  CHECK(broken_rules(single({2.1, 2.2})) == std::vector<Rule>{Rule::OneTwoS, Rule::TwoTwoS});
  CHECK(broken_rules({{2.3, -2.2}}) == std::vector<Rule>{Rule::OneTwoS, Rule::RangeFourS});
  CHECK(broken_rules(single({3.2})) == std::vector<Rule>{Rule::OneTwoS, Rule::OneThreeS});
  CHECK(broken_rules(single({1.1, 1.1, 1.1, 1.1})) == std::vector<Rule>{Rule::FourOneS});
  CHECK(broken_rules(single(std::vector<double>(10, 0.2))) == std::vector<Rule>{Rule::TenX});
  CHECK(broken_rules(single({2.5})) == std::vector<Rule>{Rule::OneTwoS});
  CHECK(broken_rules(single({-2.1, 2.2})) == std::vector<Rule>{Rule::OneTwoS}); // not the same side
  CHECK(broken_rules(single({1.1, 1.1, -1.1, 1.1})).empty());
  CHECK(broken_rules({}).empty());
  CHECK(broken_rules({{2.1, 2.2}}) ==
        std::vector<Rule>{Rule::OneTwoS, Rule::TwoTwoS}); // two materials, one run
  CHECK(broken_rules({{1.1, 1.2}, {1.3, 1.4}}) == std::vector<Rule>{Rule::FourOneS});
  CHECK(quality::rejects(Rule::OneTwoS) == false);
}

TEST_CASE("The two wordings of R-4s reject different runs") {
  const std::vector<Run> apart{{2.5, -1.8}}; // 4.3 s apart, but only one is beyond 2 s
  CHECK_FALSE(quality::breaks(Rule::RangeFourS, apart, RangeWording::EitherSide));
  CHECK(quality::breaks(Rule::RangeFourS, apart, RangeWording::Spread));
  const std::vector<Run> opposite{{2.1, -2.1}};
  CHECK(quality::breaks(Rule::RangeFourS, opposite, RangeWording::EitherSide));
  CHECK(quality::breaks(Rule::RangeFourS, opposite, RangeWording::Spread));
}

TEST_CASE("False rejection of a faultless test is that of the normal law") {
  constexpr int records = 400000;
  struct Expected {
    Rule rule;
    std::size_t runs;
    std::size_t materials;
    double rate;    ///< By the normal law.
    double printed; ///< Per cent, as tables of the rules print it: from memory.
    RangeWording wording = RangeWording::EitherSide;
  };
  const Expected table[] = {
      {Rule::OneTwoS, 1, 1, 2 * tail(2), 4.55},
      {Rule::OneTwoS, 1, 2, 1 - std::pow(1 - 2 * tail(2), 2), 8.89},
      {Rule::OneThreeS, 1, 1, 2 * tail(3), 0.27},
      {Rule::OneThreeS, 1, 2, 1 - std::pow(1 - 2 * tail(3), 2), 0.54},
      {Rule::TwoTwoS, 1, 2, 2 * std::pow(tail(2), 2), 0.10},
      {Rule::RangeFourS, 1, 2, 2 * std::pow(tail(2), 2), 0.10},
      {Rule::RangeFourS, 1, 2, 2 * tail(4 / std::sqrt(2.0)), 0.47, RangeWording::Spread},
      {Rule::FourOneS, 4, 1, 2 * std::pow(tail(1), 4), 0.13},
      {Rule::TenX, 10, 1, 2 * std::pow(0.5, 10), 0.20},
  };
  for (const Expected& row : table) {
    CAPTURE(quality::to_word(row.rule), row.materials);
    CHECK(100 * row.rate == Approx(row.printed).margin(0.006));
    CHECK(false_rate(row.rule, row.runs, row.materials, records, row.wording) ==
          Approx(row.rate).margin(error(row.rate, records)));
  }
}

TEST_CASE("Mean and deviation are those of n - 1") {
  const quality::Baseline made = quality::baseline({2, 4, 4, 4, 5, 5, 7, 9});
  CHECK(made.mean == Approx(5));
  CHECK(made.deviation == Approx(std::sqrt(32.0 / 7)));
  CHECK_THROWS(quality::baseline({1}));
}

TEST_CASE("Graded controls: one off warns, two off, crossing zero and twice on one side reject") {
  using quality::judge_grades;
  using quality::Verdict;
  CHECK(judge_grades(3, {3}) == Verdict::Good);
  CHECK(judge_grades(3, {4}) == Verdict::Warning);
  CHECK(judge_grades(3, {2}) == Verdict::Warning);
  CHECK(judge_grades(3, {5}) == Verdict::Reject);
  CHECK(judge_grades(3, {2, 2}) == Verdict::Reject);
  CHECK(judge_grades(3, {4, 2}) == Verdict::Warning);
  CHECK(judge_grades(0, {1}) == Verdict::Reject);
  CHECK(judge_grades(1, {0}) == Verdict::Reject);
  CHECK(judge_grades(0, {0}) == Verdict::Good);
  CHECK_FALSE(quality::explain_grades(0, {1}).empty());
}

TEST_CASE("The morning's float in water is good, corrected or thrown away") {
  using quality::check_float;
  using quality::FloatVerdict;
  // A. Kassa et al., 2002, p. 33: 1.002 in water at the calibration temperature is an error of + 0.002.
  CHECK(check_float(1.002, 20, 20).verdict == FloatVerdict::Correct);
  CHECK(check_float(1.002, 20, 20).zero_error == Approx(0.002));
  CHECK(check_float(1.000, 20, 20).verdict == FloatVerdict::Good);
  CHECK(check_float(1.003, 20, 20).verdict == FloatVerdict::Discard);
  CHECK(check_float(0.997, 20, 20).verdict == FloatVerdict::Discard);
  // Water at 30 C reads 0.0023 low in a float made for 20 C (Kell 1975 with ISO 1768 glass): not the float's
  // fault.
  CHECK(check_float(0.998, 30, 20).verdict == FloatVerdict::Good);
  CHECK(check_float(0.998, 30, 20).expected == Approx(0.9977).margin(0.0001));
}

TEST_CASE("A morning's entry is judged: the error by the float, the decision by the learner's own error") {
  using quality::FloatVerdict;
  using quality::judge_float;
  const auto right = judge_float(1.002, 20, 20, {0.002, FloatVerdict::Correct});
  CHECK((right.error_right && right.decision_right));
  CHECK(judge_float(1.002, 20, 20, {1.002, FloatVerdict::Correct}).error_right); // the reading itself
  const auto turned = judge_float(1.002, 20, 20, {-0.002, FloatVerdict::Correct});
  CHECK_FALSE(turned.error_right);
  CHECK(turned.words.find("sign") != std::string::npos);
  CHECK(turned.decision_right); // from the own error
  const auto kept = judge_float(1.003, 20, 20, {0.003, FloatVerdict::Correct});
  CHECK(kept.error_right);
  CHECK_FALSE(kept.decision_right);
  CHECK(kept.words.find("throw it away") != std::string::npos);
  CHECK_FALSE(judge_float(1.001, 20, 20, {std::nullopt, FloatVerdict::Good}).error_right);
  // Warm water is not the float's fault (Kell 1975 with ISO 1768 glass, as above).
  const auto warm = judge_float(0.998, 30, 20, {0, FloatVerdict::Good});
  CHECK((warm.error_right && warm.decision_right));
  const auto blamed = judge_float(0.998, 30, 20, {-0.002, FloatVerdict::Correct});
  CHECK_FALSE(blamed.error_right);
  CHECK(blamed.words.find("0.9977") != std::string::npos);
}
