#include "engine/scoring/numeric.hpp"
#include "engine/scoring/ordinal.hpp"

#include <catch2/catch.hpp>
#include <numeric>

using namespace matula;
using reading::Grade;

namespace {
constexpr Grade all[] = {Grade::Negative, Grade::Trace,     Grade::OnePlus,
                         Grade::TwoPlus,  Grade::ThreePlus, Grade::FourPlus};
}

TEST_CASE("The score matrix at normal weight is the worked one") {
  const int expected[6][6] = {{1000, 800, 50, 0, 0, 0},    {800, 1000, 800, 300, 0, 0},
                              {0, 800, 1000, 800, 300, 0}, {0, 300, 800, 1000, 800, 300},
                              {0, 0, 300, 800, 1000, 800}, {0, 0, 0, 300, 800, 1000}};
  const scoring::OrdinalRule rule;
  for (const Grade truth : all) {
    for (const Grade read : all) {
      CAPTURE(reading::to_word(truth), reading::to_word(read));
      CHECK(scoring::score_grade(truth, read, rule) ==
            expected[static_cast<int>(truth)][static_cast<int>(read)]);
    }
  }
}

TEST_CASE("Under-reading costs more where it is dangerous, over-reading does not") {
  scoring::OrdinalRule critical;
  critical.under_reading_percent = 150;
  CHECK(scoring::score_grade(Grade::TwoPlus, Grade::OnePlus, critical) == 700);
  CHECK(scoring::score_grade(Grade::TwoPlus, Grade::Trace, critical) == 0);
  CHECK(scoring::score_grade(Grade::Trace, Grade::Negative, critical) == 700);
  CHECK(scoring::score_grade(Grade::OnePlus, Grade::Trace, critical) == 700);
  CHECK(scoring::score_grade(Grade::OnePlus, Grade::TwoPlus, critical) == 800);
}

TEST_CASE("Chances of the grades sum to one and follow the worked rows") {
  for (double x = -1; x < 7; x += 0.13) {
    const auto chances = scoring::grade_chances(x, 0.25);
    CHECK(std::accumulate(chances.begin(), chances.end(), 0.0) == Approx(1.0));
  }
  const auto middle = scoring::grade_chances(2.0, 0.25);
  CHECK(middle[2] == Approx(0.954).margin(5e-4));
  CHECK(middle[1] == Approx(0.023).margin(5e-4));
  const auto line = scoring::grade_chances(0.55, 0.25);
  CHECK(line[0] == Approx(0.421).margin(5e-4));
}

TEST_CASE("A tube on the line pays both neighbours in full") {
  const scoring::OrdinalRule rule;
  const auto earns = [&](double x, Grade read) { return scoring::score_intensity(x, read, rule).per_mille; };
  CHECK(earns(2.00, Grade::Negative) == 18);
  CHECK(earns(2.00, Grade::OnePlus) == 1000);
  CHECK(earns(1.50, Grade::Negative) == 444);
  CHECK(earns(1.50, Grade::Trace) == 1000);
  CHECK(earns(1.50, Grade::OnePlus) == 1000);
  CHECK(earns(1.50, Grade::TwoPlus) == 611);
  CHECK(earns(1.45, Grade::OnePlus) == 965);
  CHECK(earns(0.55, Grade::Negative) == 965);
  CHECK(earns(0.55, Grade::Trace) == 1000);
  CHECK(earns(0.55, Grade::OnePlus) == 529);
  CHECK(scoring::score_intensity(1.5, Grade::Trace, rule).borderline);
  CHECK_FALSE(scoring::score_intensity(2.0, Grade::OnePlus, rule).borderline);
}

TEST_CASE("The whole worked table of tubes near a line") {
  // Computed by the formula with normal distributions of SciPy 1.10: chances of the grades, then the mean
  // score of each answer over its best.
  struct Row {
    double x;
    int negative, trace, one, two;
  };
  const scoring::OrdinalRule rule;
  for (const Row& row : {Row{2.00, 18, 800, 1000, 800}, Row{1.50, 444, 1000, 1000, 611},
                         Row{1.45, 506, 1000, 965, 557}, Row{0.55, 965, 1000, 529, 190}}) {
    CAPTURE(row.x);
    CHECK(scoring::score_intensity(row.x, Grade::Negative, rule).per_mille == row.negative);
    CHECK(scoring::score_intensity(row.x, Grade::Trace, rule).per_mille == row.trace);
    CHECK(scoring::score_intensity(row.x, Grade::OnePlus, rule).per_mille == row.one);
    CHECK(scoring::score_intensity(row.x, Grade::TwoPlus, rule).per_mille == row.two);
  }
}

TEST_CASE("A miss is flagged only where nearly every reader would report") {
  const scoring::OrdinalRule rule;
  CHECK(scoring::score_intensity(3.0, Grade::Negative, rule).missed_finding);
  CHECK_FALSE(scoring::score_intensity(1.6, Grade::Negative, rule).missed_finding);
  CHECK(scoring::score_intensity(0.0, Grade::OnePlus, rule).false_alarm);
  CHECK_FALSE(scoring::score_intensity(0.5, Grade::OnePlus, rule).false_alarm);
}

TEST_CASE("The right grade of any tube earns everything and a further one never earns more") {
  const scoring::OrdinalRule rule;
  for (double x = 0; x <= 5; x += 0.05) {
    int best = 0;
    for (const Grade read : all) {
      best = std::max(best, scoring::score_intensity(x, read, rule).per_mille);
    }
    CHECK(best == 1000);
  }
}

TEST_CASE("Numbers earn by tolerance") {
  CHECK(scoring::credit_per_mille(0.0, 0.001, 0.003) == 1000);
  CHECK(scoring::credit_per_mille(1.026 - 1.025, 0.001, 0.003) == 1000);
  CHECK(scoring::credit_per_mille(-0.002, 0.001, 0.003) == 500);
  CHECK(scoring::credit_per_mille(0.003, 0.001, 0.003) == 0);
  CHECK(scoring::credit_per_mille(1.0, 0.001, 0.003) == 0);
  CHECK(scoring::reading_error(1.026, 1.0263, 0.001) == Approx(0).margin(1e-12));
  CHECK(scoring::reading_error(1.0263, 1.0263, 0.001) == Approx(0).margin(1e-12));
}

TEST_CASE("Numbers are taken as people write them") {
  CHECK(scoring::number_from_text(" 1.023 ") == 1.023);
  CHECK(scoring::number_from_text("1,023") == 1.023);
  CHECK(scoring::number_from_text("+0.001") == 0.001);
  CHECK(scoring::number_from_text("22.5 °C") == 22.5);
  CHECK_FALSE(scoring::number_from_text("").has_value());
  CHECK_FALSE(scoring::number_from_text("straw").has_value());
  CHECK_FALSE(scoring::number_from_text("1.0 2").has_value());
}

TEST_CASE("Splitting marks loses none") {
  CHECK(scoring::split_marks(20, {40, 15, 20, 10, 10, 5}) == std::vector<int>{8, 3, 4, 2, 2, 1});
  const auto odd = scoring::split_marks(7, {1, 1, 1});
  CHECK(std::accumulate(odd.begin(), odd.end(), 0) == 7);
  CHECK(scoring::split_marks(5, {0, 0}) == std::vector<int>{0, 0});
}
