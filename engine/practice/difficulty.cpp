#include "engine/practice/difficulty.hpp"

#include <algorithm>
#include <cmath>

namespace matula::practice {

namespace {

bool is_right(double intensity, std::size_t grade, const scoring::OrdinalRule& rule, int right_from) {
  return scoring::score_intensity(intensity, static_cast<reading::Grade>(grade), rule).per_mille >=
         right_from;
}

} // namespace

double distance_to_line(double intensity, const scoring::OrdinalRule& rule, int right_from) {
  std::size_t lowest = rule.grades;
  std::size_t highest = 0;
  for (std::size_t grade = 0; grade < rule.grades; ++grade) {
    if (is_right(intensity, grade, rule, right_from)) {
      lowest = std::min(lowest, grade);
      highest = std::max(highest, grade);
    }
  }
  double distance = 1;
  if (lowest > 0) {
    distance = std::min(distance, intensity - (static_cast<double>(lowest) - 0.5));
  }
  if (highest + 1 < rule.grades) {
    distance = std::min(distance, static_cast<double>(highest) + 0.5 - intensity);
  }
  return std::max(distance, 0.0);
}

double distance_to_half(double reading, double division, double full) {
  const double at = reading / division;
  const double from_half = std::abs(at - std::floor(at) - 0.5); // 0 half way, 0.5 on a mark.
  const bool both_right = 0.5 + from_half <= full / division;
  return both_right ? 1 - from_half : from_half;
}

double difficulty_at(double distance, const DifficultyRules& rules) {
  return std::log(rules.line_at / std::max(distance, rules.least));
}

double distance_for(double difficulty, const DifficultyRules& rules) {
  return rules.line_at * std::exp(-difficulty);
}

double sum_difficulty(const Sum& sum, const DifficultyRules& rules) {
  const double degrees = sum.basis.temperature_c - sum.basis.calibration_c;
  const int steps = (sum.basis.zero_error != 0 ? 1 : 0) + (degrees != 0 ? 1 : 0) +
                    (sum.protein_g_dl > 0 ? 1 : 0) + (sum.glucose_g_dl > 0 ? 1 : 0);
  const double whole = degrees / sum.basis.per_degrees_c;
  return rules.sum_one_step + rules.sum_each_further * std::max(steps - 1, 0) +
         (degrees < 0 ? rules.sum_below : 0) + (whole != std::round(whole) ? rules.sum_not_whole : 0);
}

double step_set_difficulty(const std::string& what, const DifficultyRules& rules) {
  const auto steps = static_cast<double>(split(what, '+').size());
  return rules.sum_one_step + rules.sum_each_further * (steps - 1);
}

double delivery_difficulty(const std::string& fault, const std::string& verdict,
                           const DifficultyRules& rules) {
  const auto known = rules.delivery.find(fault);
  return (known == rules.delivery.end() ? 0 : known->second) +
         (verdict == "qualify" ? rules.delivery_qualify : 0);
}

} // namespace matula::practice
