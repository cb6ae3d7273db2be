#include "sim/reading/powder.hpp"

#include "sim/reading/stages.hpp"

#include <algorithm>

namespace matula::reading {

namespace {
constexpr double least_share = 1e-3; // Keeps logarithms finite.
}

GradeReading read_powder(const Looks& looks, const PowderScale& scale) {
  if (!looks.white->powder) {
    return {Grade::Negative, 0, "no powder on the surface"};
  }
  const double sunk = std::max(1 - looks.white->powder->floating_share, least_share);
  Margins margins{};
  margins.fill(no_line);
  for (std::size_t k = 0; k < std::min(scale.lines.size(), margins.size()); ++k) {
    margins[k] = rising(sunk, scale.lines[k]);
  }
  const Grade grade = highest_crossed(margins);
  const auto index = static_cast<std::size_t>(grade);
  return {grade, intensity(grade, margins), index < scale.seen.size() ? scale.seen[index] : ""};
}

} // namespace matula::reading
