#pragma once

#include "engine/statistics/agreement.hpp"

namespace matula::statistics {

struct Interval {
  double low = 0;
  double high = 0;
};

/// Kappa of a class with students drawn anew, whole, `draws` times: readings of one student are not
/// independent, and drawing readings would make the interval several times too narrow. Middle `coverage` of
/// the draws. The same seed gives the same interval everywhere. Nothing for fewer than two students, or when
/// a draw has no kappa. Throws std::invalid_argument for weights of another
/// scale.
[[nodiscard]] std::optional<Interval> kappa_interval(const std::vector<PairTable>& by_student,
                                                     const std::vector<double>& weights, int draws,
                                                     std::uint64_t seed, double coverage = 0.95);

} // namespace matula::statistics
