#pragma once

#include "engine/statistics/agreement.hpp"

namespace matula::statistics {

/// What several readers said of each thing: how many of them named each category. A thing nobody or only one
/// reader named is allowed where the measure allows it.
struct Ballots {
  std::size_t categories = 0;
  std::vector<std::vector<double>> votes; ///< A row a thing, a column a category.
};

/// From readings by thing and reader, -1 where there is none. Throws std::out_of_range for a category the
/// scale does not have.
[[nodiscard]] Ballots count_votes(const std::vector<std::vector<int>>& by_thing, std::size_t categories);

/// J.L. Fleiss, Psychol. Bull. 76 (1971) 378. Throws std::invalid_argument when the things do not all have
/// the same number of readers, two or more.
[[nodiscard]] std::optional<double> fleiss_kappa(const Ballots& ballots);

/// How far two categories lie apart in Krippendorff's alpha. Ordinal is his own metric, which counts the
/// readings between two grades; it is not the same as weights by rank.
enum class Metric { Nominal, Ordinal, Interval, Ratio };

/// K. Krippendorff, Content Analysis, 2004, ch. 11. Gaps allowed. `values` are the numbers the categories
/// stand for, used by the interval and the ratio metric.
[[nodiscard]] std::optional<double> krippendorff_alpha(const Ballots& ballots, Metric metric,
                                                       const std::vector<double>& values);

/// The same with any table of distances between categories, row by row, 0 on the diagonal.
[[nodiscard]] std::optional<double> krippendorff_alpha(const Ballots& ballots,
                                                       const std::vector<double>& distances);

struct Gwet {
  double value = 0;
  double agreement = 0; ///< Weighted share of agreeing pairs of readers.
  double chance = 0;
  double se = 0; ///< Over things, readers held fixed.
};

/// K.L. Gwet, Handbook of Inter-Rater Reliability, 2014: AC1 with nominal weights, AC2 with others. Gaps
/// allowed; holds where nearly everything is of one grade, which kappa does not.
[[nodiscard]] std::optional<Gwet> gwet_ac(const Ballots& ballots, const std::vector<double>& weights);

} // namespace matula::statistics
