#pragma once

#include "engine/statistics/agreement.hpp"

namespace matula::statistics {

struct Interval {
  double low = 0;
  double high = 0;
};

/// A coefficient of agreement, to be found again and again.
struct Coefficient {
  enum class Kind { Kappa, Gwet };
  Kind kind = Kind::Kappa;
  std::vector<double> weights; ///< Of agreement, row by row.
};

/// Coefficients of a class with students drawn anew, whole, `draws` times: readings of one student are not
/// independent, and drawing readings would make the interval several times too narrow. Middle `coverage` of
/// the draws, one for each coefficient, all of the same draws. The same seed gives the same intervals
/// everywhere. Nothing for fewer than two students, or for a coefficient that a draw does not have. Throws
/// std::invalid_argument for weights of another scale.
[[nodiscard]] std::vector<std::optional<Interval>> intervals(const std::vector<PairTable>& by_student,
                                                             const std::vector<Coefficient>& coefficients,
                                                             int draws, std::uint64_t seed,
                                                             double coverage = 0.95);

/// The same for kappa_value alone,
[[nodiscard]] std::optional<Interval> kappa_interval(const std::vector<PairTable>& by_student,
                                                     const std::vector<double>& weights, int draws,
                                                     std::uint64_t seed, double coverage = 0.95);

/// and for gwet_value.
[[nodiscard]] std::optional<Interval> gwet_interval(const std::vector<PairTable>& by_student,
                                                    const std::vector<double>& weights, int draws,
                                                    std::uint64_t seed, double coverage = 0.95);

/// Gwet's coefficient of a table of pairs, the value of gwet_ac in raters.hpp with two readers of each thing:
/// AC1 with nominal weights, AC2 with others. Nothing for an empty table, or one in which chance agrees
/// always. Throws std::invalid_argument for weights of another scale.
[[nodiscard]] std::optional<double> gwet_value(const PairTable& table, const std::vector<double>& weights);

} // namespace matula::statistics
