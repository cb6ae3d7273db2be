#pragma once

#include <array>
#include <cstddef>
#include <vector>

namespace matula::matter {

/// Sum of a[i] b[i] over the shorter of both. Four sums side by side, always in the same order: the processor
/// need not wait for one addition before the next, and every compiler gets the same bits.
[[nodiscard]] inline double sum_of_products(const std::vector<double>& a, const std::vector<double>& b) {
  const std::size_t size = a.size() < b.size() ? a.size() : b.size();
  std::array<double, 4> sum{};
  std::size_t i = 0;
  for (; i + 4 <= size; i += 4) {
    for (std::size_t lane = 0; lane < 4; ++lane) {
      sum[lane] += a[i + lane] * b[i + lane];
    }
  }
  for (; i < size; ++i) {
    sum[0] += a[i] * b[i];
  }
  return (sum[0] + sum[1]) + (sum[2] + sum[3]);
}

} // namespace matula::matter
