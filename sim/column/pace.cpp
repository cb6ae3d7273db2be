#include "sim/column/pace.hpp"

#include <algorithm>
#include <cmath>

namespace matula::column {

namespace {

constexpr double first_step_s = 1.5;
constexpr double last_step_s = 30; // a cup left for hours
constexpr double little_change =
    0.005; // of a kind's mass between classes and bed in one step: the next may be longer
constexpr double much_change = 0.02; // the next must be shorter
constexpr double little_change_k = 0.2;
constexpr double nothing_g = 1e-9;

std::vector<double> solids(const Column& column) {
  const std::size_t kinds = column.sediment.populations.size();
  std::vector<double> grams(2 * kinds * matter::size_bins, 0.0);
  const auto add = [&grams](const matter::Mixture& part, std::size_t offset) {
    for (std::size_t k = 0; k < part.populations.size(); ++k) {
      if (part.populations[k].empty()) {
        continue;
      }
      for (std::size_t i = 0; i < matter::size_bins; ++i) {
        grams[offset + k * matter::size_bins + i] += part.populations[k].grams[i];
      }
    }
  };
  for (const matter::Mixture& layer : column.layers) {
    add(layer, 0);
  }
  add(column.sediment, kinds * matter::size_bins);
  return grams;
}

/// Largest share of one kind's mass that went elsewhere.
double moved_share(const std::vector<double>& before, const std::vector<double>& after) {
  const std::size_t kinds = after.size() / (2 * matter::size_bins);
  double most = 0;
  for (std::size_t k = 0; k < kinds; ++k) {
    double total = 0;
    double moved = 0;
    for (const std::size_t half : {k, kinds + k}) {
      for (std::size_t i = half * matter::size_bins; i < (half + 1) * matter::size_bins; ++i) {
        total += after[i];
        moved += std::abs(after[i] - before[i]);
      }
    }
    if (total > nothing_g) {
      most = std::max(most, 0.5 * moved / total);
    }
  }
  return most;
}

} // namespace

Pace::Pace(const Column& column)
    : solids_(solids(column)), temperature_c_(mean_temperature_c(column)), longest_s_(first_step_s) {}

double Pace::after(const Column& column, double step_s) {
  std::vector<double> now = solids(column);
  const double moved = moved_share(solids_, now);
  const double warmed_k = std::abs(mean_temperature_c(column) - temperature_c_);
  solids_ = std::move(now);
  temperature_c_ = mean_temperature_c(column);
  if (moved > much_change) {
    longest_s_ = std::max(0.5 * longest_s_, first_step_s);
  } else if (moved < little_change && warmed_k < little_change_k && step_s > 0.9 * longest_s_) {
    longest_s_ = std::min(2 * longest_s_, last_step_s);
  }
  return longest_s_;
}

} // namespace matula::column
