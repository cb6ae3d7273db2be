#include "sim/reading/stages.hpp"

#include <algorithm>
#include <cmath>

namespace matula::reading {

namespace {
constexpr double floor_ratio = 1e-3; // Far beyond any line; keeps logarithms finite.
}

Grade highest_crossed(const Margins& margins) {
  for (std::size_t k = margins.size(); k-- > 0;) {
    if (margins[k] >= 0) {
      return static_cast<Grade>(k + 1);
    }
  }
  return Grade::Negative;
}

double intensity(Grade grade, const Margins& margins) {
  const auto g = static_cast<std::size_t>(grade);
  // The two ends of the scale have one line only: they saturate half a grade away from it.
  const double above = g == 0 ? 1.0 : std::max(margins[g - 1], 0.0);
  const bool last = g == margins.size() || margins[g] <= no_line; // Also of a scale with fewer words.
  const double below = last ? 1.0 : std::max(-margins[g], 0.0);
  if (g == 0) {
    return 0.5 * std::exp(-below);
  }
  if (last) {
    return static_cast<double>(g) - 0.5 * std::exp(-above);
  }
  const double share = above + below > 0 ? above / (above + below) : 0.5;
  return static_cast<double>(g) - 0.5 + share;
}

double rising(double value, double line) {
  return std::log(std::max(value / line, floor_ratio));
}

double falling(double value, double line) {
  return std::log(std::max(line, 1e-9) / std::max(value, line * floor_ratio));
}

} // namespace matula::reading
