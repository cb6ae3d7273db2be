#include "sim/column/pace.hpp"

#include <algorithm>
#include <cmath>

namespace matula::column {

namespace {

/// How long steps may be, and how much of a kind's mass may move between classes and bed in one of them.
struct Patience {
  double first_s;
  double last_s;
  double little; ///< The next may be longer.
  double much;   ///< The next must be shorter.
};
constexpr Patience watched{1.5, 30, 0.005, 0.02};
constexpr Patience alone{30, 600, 0.03, 0.1}; // a cup left for hours
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

Pace::Pace(const Column& column, bool unwatched)
    : unwatched_(unwatched), solids_(solids(column)), temperature_c_(mean_temperature_c(column)),
      longest_s_((unwatched ? alone : watched).first_s) {}

double Pace::after(const Column& column, double step_s) {
  const Patience& patience = unwatched_ ? alone : watched;
  std::vector<double> now = solids(column);
  const double moved = moved_share(solids_, now);
  const double warmed_k = std::abs(mean_temperature_c(column) - temperature_c_);
  solids_ = std::move(now);
  temperature_c_ = mean_temperature_c(column);
  if (moved > patience.much) {
    longest_s_ = std::max(0.5 * longest_s_, patience.first_s);
  } else if (moved < patience.little && warmed_k < little_change_k && step_s > 0.9 * longest_s_) {
    longest_s_ = std::min(2 * longest_s_, patience.last_s);
  }
  return longest_s_;
}

} // namespace matula::column
