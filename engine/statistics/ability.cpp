#include "engine/statistics/ability.hpp"

#include <array>
#include <cmath>

namespace matula::statistics {

double chance_right(double ability, double difficulty) {
  return 1 / (1 + std::exp(difficulty - ability));
}

double difficulty_for(double ability, double chance) {
  return ability - std::log(chance / (1 - chance));
}

Ability estimate_ability(std::span<const Answer> answers) {
  constexpr std::size_t points = 81;
  constexpr double widest = 4;
  std::array<double, points> at{};
  std::array<double, points> log_weight{};
  double largest = -1e300;
  for (std::size_t i = 0; i < points; ++i) {
    at[i] = -widest + 2 * widest * static_cast<double>(i) / (points - 1);
    log_weight[i] = -0.5 * at[i] * at[i];
    for (const Answer& answer : answers) {
      const double logit = at[i] - answer.difficulty;
      log_weight[i] -= std::log1p(std::exp(answer.right ? -logit : logit));
    }
    largest = std::max(largest, log_weight[i]);
  }
  double sum = 0;
  double mean = 0;
  double square = 0;
  for (std::size_t i = 0; i < points; ++i) {
    const double weight = std::exp(log_weight[i] - largest);
    sum += weight;
    mean += weight * at[i];
    square += weight * at[i] * at[i];
  }
  mean /= sum;
  return {mean, std::sqrt(square / sum - mean * mean)};
}

} // namespace matula::statistics
