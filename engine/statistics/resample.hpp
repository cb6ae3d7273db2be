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

/// The same for gwet_value.
[[nodiscard]] std::optional<Interval> gwet_interval(const std::vector<PairTable>& by_student,
                                                    const std::vector<double>& weights, int draws,
                                                    std::uint64_t seed, double coverage = 0.95);

/// Gwet's coefficient of a table of pairs, the value of gwet_ac in raters.hpp with two readers of each thing:
/// AC1 with nominal weights, AC2 with others. Nothing for an empty table, or one in which chance agrees
/// always. Throws std::invalid_argument for weights of another scale.
[[nodiscard]] std::optional<double> gwet_value(const PairTable& table, const std::vector<double>& weights);

} // namespace matula::statistics
