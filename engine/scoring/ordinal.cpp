#include "engine/scoring/ordinal.hpp"

#include <algorithm>
#include <cmath>
#include <cstdlib>

namespace matula::scoring {
namespace {

using reading::Grade;
constexpr double nearly_sure = 0.9; // Published bands know no doubt; our own choice for raising a flag.
constexpr int nearly_full = 950;

double normal_below(double z) {
  return 0.5 * std::erfc(-z / std::sqrt(2.0));
}

int expected_score(const Chances& chances, Grade read, const OrdinalRule& rule, double scale) {
  double sum = 0;
  for (std::size_t k = 0; k < rule.grades; ++k) {
    sum += chances[k] * score_grade(static_cast<Grade>(k), read, rule);
  }
  return static_cast<int>(std::lround(sum * scale));
}

double best_score(const Chances& chances, const OrdinalRule& rule) {
  double best = 0;
  for (std::size_t y = 0; y < rule.grades; ++y) {
    double sum = 0;
    for (std::size_t k = 0; k < rule.grades; ++k) {
      sum += chances[k] * score_grade(static_cast<Grade>(k), static_cast<Grade>(y), rule);
    }
    best = std::max(best, sum);
  }
  return best;
}

} // namespace

int score_grade(Grade truth, Grade read, const OrdinalRule& rule) {
  const int t = static_cast<int>(truth);
  const int y = static_cast<int>(read);
  const int reportable = static_cast<int>(rule.reportable);
  const auto distance = static_cast<std::size_t>(std::abs(y - t));
  int lost = rule.loss[std::min(distance, rule.loss.size() - 1)];
  if (y < t) {
    lost = lost * rule.under_reading_percent / 100;
  }
  if (t >= reportable && y == 0) {
    lost += rule.missed_finding;
  }
  if (t == 0 && y >= reportable) {
    lost += rule.false_alarm;
  }
  return std::clamp(1000 - lost, 0, 1000);
}

Chances grade_chances(double intensity, double reader_spread, std::size_t grades) {
  Chances chances{};
  double below = 0;
  for (std::size_t k = 0; k < std::min(grades, chances.size()); ++k) {
    const double line = static_cast<double>(k) + 0.5;
    const double up_to = k + 1 == grades ? 1.0 : normal_below((line - intensity) / reader_spread);
    chances[k] = up_to - below;
    below = up_to;
  }
  return chances;
}

OrdinalResult score_intensity(double intensity, Grade read, const OrdinalRule& rule) {
  const auto chances = grade_chances(intensity, rule.reader_spread, rule.grades);
  const double scale = 1000.0 / best_score(chances, rule);
  OrdinalResult result;
  result.per_mille = expected_score(chances, read, rule, scale);
  double chance_reportable = 0;
  int nearly_right = 0;
  for (std::size_t k = 0; k < rule.grades; ++k) {
    const auto grade = static_cast<Grade>(k);
    chance_reportable += grade >= rule.reportable ? chances[k] : 0.0;
    nearly_right += expected_score(chances, grade, rule, scale) >= nearly_full ? 1 : 0;
  }
  result.missed_finding = read == Grade::Negative && chance_reportable >= nearly_sure;
  result.false_alarm = read >= rule.reportable && chances[0] >= nearly_sure;
  result.borderline = nearly_right > 1;
  return result;
}

} // namespace matula::scoring
