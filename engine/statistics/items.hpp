#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <vector>

namespace matula::statistics {

/// Scores of persons on items, a row a person. Any scores; 0 and 1 for right and wrong.
struct ScoreTable {
  std::size_t persons = 0;
  std::size_t items = 0;
  std::vector<std::uint16_t> scores; ///< persons x items, row by row.
};

struct ItemFigures {
  double mean = 0;      ///< Share right, for scores of 0 and 1.
  double with_rest = 0; ///< Correlation with the sum of the other items; 0 when one of the two never varies.
  double alpha_without = 0; ///< Coefficient alpha of the other items; 0 when they never vary.
};

struct TestFigures {
  double mean = 0;
  double variance =
      0; ///< Of the sums, over n: the same divisor as in the items, which a mixed formula gets wrong.
  double alpha = 0; ///< Coefficient alpha; KR-20 for scores of 0 and 1.
  double error = 0; ///< Standard error of measurement, sd sqrt(1 - alpha).
  std::vector<ItemFigures> items;
};

/// L.J. Cronbach, Psychometrika 16 (1951) 297; G.F. Kuder and M.W. Richardson, Psychometrika 2 (1937) 151.
/// Nothing for fewer than two persons or items, or when all sums are equal. Throws std::invalid_argument when
/// `scores` does not have persons x items entries.
[[nodiscard]] std::optional<TestFigures> analyse_items(const ScoreTable& table);

/// Kuder and Richardson's formula 21: from mean and variance (over n) of the sums of `items` right-wrong
/// items alone.
[[nodiscard]] double kr21(std::size_t items, double mean, double variance);

/// The highest the correlation may well be in the long run when so many persons showed `correlation`, -1 to
/// 1: by the transformation z = artanh r, of standard error 1/sqrt(persons - 3). R.A. Fisher, Metron 1 (1921)
/// 3. `deviate` is how far up to go: 1.645 for one-sided 95 %, 1.960 for the upper end of a 95 % interval. 1
/// for fewer than four persons, of whom nothing can be said. The lowest it may be is minus the bound of
/// -correlation.
[[nodiscard]] double correlation_at_most(double correlation, std::size_t persons, double deviate);

} // namespace matula::statistics
