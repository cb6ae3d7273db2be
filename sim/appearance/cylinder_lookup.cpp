#include "sim/appearance/cylinder_lookup.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace matula::appearance {

namespace {

constexpr double darkest = 1e-12; // Keeps logarithms finite.
constexpr std::size_t cell = 2 * lateral_samples;

struct Place {
  std::size_t below = 0;
  double share = 0; ///< 0 at grid[below], 1 at grid[below + 1].
};

/// Where a value lies on an ascending grid that starts at 0, in the coordinate log(1 + value / knee).
Place place(const std::vector<double>& grid, double value, double knee) {
  const double v = std::clamp(value, grid.front(), grid.back());
  const auto above = std::upper_bound(grid.begin(), grid.end() - 1, v);
  const auto i = static_cast<std::size_t>(above - grid.begin()) - 1;
  if (i + 1 >= grid.size()) {
    return {grid.size() - 2, 1.0};
  }
  const auto scale = [knee](double x) { return knee > 0 ? std::log1p(x / knee) : x; };
  return {i, (scale(v) - scale(grid[i])) / (scale(grid[i + 1]) - scale(grid[i]))};
}

constexpr double scatter_knee = 0.1; // Below it light scatters once and adds up; above it steps are relative.

} // namespace

CylinderLookup::CylinderLookup(const CylinderTable& table) : table_(table) {
  const std::size_t count = table.reduced_scatter.size() * table.absorption.size() * lateral_samples;
  if (table.reduced_scatter.size() < 2 || table.absorption.size() < 2 || table.on_white.size() != count ||
      table.on_black.size() != count) {
    throw std::logic_error("the cylinder table is not complete");
  }
  log_values_.resize(2 * count);
  for (std::size_t c = 0; c < count / lateral_samples; ++c) {
    for (std::size_t i = 0; i < lateral_samples; ++i) {
      const std::size_t from = c * lateral_samples + i;
      log_values_[c * cell + i] = std::log(std::max(table.on_white[from], darkest));
      log_values_[c * cell + lateral_samples + i] = std::log(std::max(table.on_black[from], darkest));
    }
  }
}

CylinderLookup::Light CylinderLookup::at(double reduced_scatter, double absorption) const {
  const double deepest = table_.reduced_scatter.back();
  if (reduced_scatter > deepest) {
    absorption *= deepest / reduced_scatter;
    reduced_scatter = deepest;
  }
  const double darkest_liquid = table_.absorption.back();
  if (absorption > darkest_liquid) {
    // So deep that nothing crosses: what comes back goes with the ratio of the two.
    reduced_scatter *= darkest_liquid / absorption;
    absorption = darkest_liquid;
  }
  const Place s = place(table_.reduced_scatter, reduced_scatter, scatter_knee);
  const Place a = place(table_.absorption, absorption, 0);
  const std::size_t row = table_.absorption.size() * cell;
  const double* corner = &log_values_[s.below * row + a.below * cell];
  const double w00 = (1 - s.share) * (1 - a.share);
  const double w01 = (1 - s.share) * a.share;
  const double w10 = s.share * (1 - a.share);
  const double w11 = s.share * a.share;
  Light light;
  for (std::size_t i = 0; i < cell; ++i) {
    const double log_value =
        w00 * corner[i] + w01 * corner[cell + i] + w10 * corner[row + i] + w11 * corner[row + cell + i];
    (i < lateral_samples ? light.on_white[i] : light.on_black[i - lateral_samples]) = std::exp(log_value);
  }
  return light;
}

} // namespace matula::appearance
