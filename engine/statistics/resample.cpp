#include "engine/statistics/resample.hpp"

#include <algorithm>
#include <cmath>
#include <random>

namespace matula::statistics {

namespace {

/// Evenly from 0 to below `end`; the standard's own distributions differ from library to library.
std::size_t pick(std::mt19937_64& source, std::size_t end) {
  constexpr int half_word = 32;
  return static_cast<std::size_t>(((source() >> half_word) * end) >> half_word);
}

/// Between the neighbours, as R's type 7 and NumPy do.
double quantile(const std::vector<double>& sorted, double share) {
  const double place = share * static_cast<double>(sorted.size() - 1);
  const auto below = static_cast<std::size_t>(place);
  const std::size_t above = std::min(below + 1, sorted.size() - 1);
  return sorted[below] + (place - static_cast<double>(below)) * (sorted[above] - sorted[below]);
}

} // namespace

std::optional<Interval> kappa_interval(const std::vector<PairTable>& by_student,
                                       const std::vector<double>& weights, int draws, std::uint64_t seed,
                                       double coverage) {
  if (by_student.size() < 2 || draws < 1) {
    return std::nullopt;
  }
  const std::size_t cells = by_student.front().counts().size();
  std::vector<double> flat; // All tables in one row: a draw reads them at random.
  flat.reserve(by_student.size() * cells);
  for (const PairTable& table : by_student) {
    flat.insert(flat.end(), table.counts().begin(), table.counts().end());
  }
  std::mt19937_64 source(seed);
  std::vector<double> values;
  values.reserve(static_cast<std::size_t>(draws));
  PairTable drawn(by_student.front().categories());
  for (int draw = 0; draw < draws; ++draw) {
    auto& sum = drawn.counts();
    std::fill(sum.begin(), sum.end(), 0.0);
    for (std::size_t i = 0; i < by_student.size(); ++i) {
      const double* row = flat.data() + pick(source, by_student.size()) * cells;
      for (std::size_t c = 0; c < cells; ++c) {
        sum[c] += row[c];
      }
    }
    const auto value = kappa_value(drawn, weights);
    if (!value) {
      return std::nullopt;
    }
    values.push_back(*value);
  }
  std::sort(values.begin(), values.end());
  const double tail = (1 - coverage) / 2;
  return Interval{quantile(values, tail), quantile(values, 1 - tail)};
}

} // namespace matula::statistics
