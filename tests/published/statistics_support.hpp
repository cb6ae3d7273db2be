#pragma once

#include "engine/statistics/boundaries.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <random>
#include <vector>

namespace matula::statistics_tests {

/// Chance that is alike with every library.
class Dice {
public:
  explicit Dice(std::uint64_t seed) : source_(seed) {}
  double even() { return static_cast<double>(source_() >> 11) / 9007199254740992.0; }
  /// By G.E.P. Box and M.E. Muller, Ann. Math. Stat. 29 (1958) 610.
  double normal() {
    const double radius = std::sqrt(-2 * std::log(1 - even()));
    return radius * std::cos(6.283185307179586 * even());
  }
  std::size_t below(std::size_t end) { return static_cast<std::size_t>(even() * static_cast<double>(end)); }

private:
  std::mt19937_64 source_;
};

/// A reader with lines and a spread of their own.
struct Reader {
  std::array<double, statistics::lines> line = statistics::reference_lines;
  double spread = 0.5;

  [[nodiscard]] int read(Dice& dice, double intensity) const {
    const double seen = intensity + spread * dice.normal();
    int grade = 0;
    for (const double one : line) {
      grade += seen > one ? 1 : 0;
    }
    return grade;
  }
  [[nodiscard]] double shift() const {
    double sum = 0;
    for (std::size_t k = 0; k < statistics::lines; ++k) {
      sum += (line[k] - statistics::reference_lines[k]) / statistics::lines;
    }
    return sum;
  }
};

/// One of a class: shifts of half a grade, single lines of a quarter, spreads about half a grade.
inline Reader any_reader(Dice& dice) {
  Reader reader;
  const double shift = 0.5 * dice.normal();
  for (double& one : reader.line) {
    one += shift + 0.25 * dice.normal();
  }
  std::sort(reader.line.begin(), reader.line.end());
  reader.spread = 0.5 * std::exp(0.3 * dice.normal());
  return reader;
}

inline Reader shifted_reader(double shift, double spread = 0.5) {
  Reader reader;
  for (double& one : reader.line) {
    one += shift;
  }
  reader.spread = spread;
  return reader;
}

/// Readings of tubes spread evenly from clear to past the last line.
inline std::vector<statistics::GradedReading> readings_of(Dice& dice, const Reader& reader, int count) {
  std::vector<statistics::GradedReading> readings;
  for (int i = 0; i < count; ++i) {
    const double x = -0.5 + 6 * dice.even();
    readings.push_back({x, reader.read(dice, x)});
  }
  return readings;
}

} // namespace matula::statistics_tests
