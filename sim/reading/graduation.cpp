#include "sim/reading/graduation.hpp"

#include <cstdlib>
#include <utility>
#include <vector>

namespace matula::reading {

namespace {

/// Height and figure of the lines that carry a number, from the bottom up.
std::vector<std::pair<double, double>> numbered(const appearance::Appearance& looks) {
  std::vector<std::pair<double, double>> lines{{0, 0}};
  for (const auto& mark : looks.marks) {
    char* end = nullptr;
    const double figure = std::strtod(mark.label.c_str(), &end);
    if (!mark.label.empty() && *end == '\0' && mark.height_mm > lines.back().first) {
      lines.emplace_back(mark.height_mm, figure);
    }
  }
  return lines;
}

} // namespace

std::optional<double> read_graduation(const appearance::Appearance& looks) {
  const auto lines = numbered(looks);
  if (lines.size() < 3) {
    return std::nullopt;
  }
  std::size_t above = 1;
  while (above + 1 < lines.size() && lines[above].first < looks.sediment.height_mm) {
    ++above;
  }
  const auto& [low_mm, low] = lines[above - 1];
  const auto& [high_mm, high] = lines[above];
  return low + (high - low) * (looks.sediment.height_mm - low_mm) / (high_mm - low_mm);
}

} // namespace matula::reading
