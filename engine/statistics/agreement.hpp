#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <vector>

namespace matula::statistics {

/// Counts of paired grades. Rows are what was there, columns what was read. The number of categories comes
/// from the scale, never from the data: a grade nobody used still has its place, and its weight.
class PairTable {
public:
  explicit PairTable(std::size_t categories) : categories_(categories), counts_(categories * categories) {}

  /// Throws std::out_of_range for a category the scale does not have.
  void add(std::size_t truth, std::size_t reading, double times = 1);
  void operator+=(const PairTable& other);

  [[nodiscard]] std::size_t categories() const { return categories_; }
  [[nodiscard]] double count(std::size_t truth, std::size_t reading) const {
    return counts_[truth * categories_ + reading];
  }
  [[nodiscard]] double total() const;
  [[nodiscard]] const std::vector<double>& counts() const { return counts_; } ///< Row by row.
  [[nodiscard]] std::vector<double>& counts() { return counts_; }

private:
  std::size_t categories_;
  std::vector<double> counts_;
};

/// Pairs of grades given side by side. Throws std::invalid_argument for lengths that differ,
/// std::out_of_range for a category the scale does not have.
[[nodiscard]] PairTable count_pairs(std::span<const std::uint8_t> truth, std::span<const std::uint8_t> read,
                                    std::size_t categories);

enum class Weighting { Nominal, Linear, Quadratic };

/// Agreement weights, row by row: 1 on the diagonal, falling with the distance to 0.
[[nodiscard]] std::vector<double> agreement_weights(Weighting weighting, std::size_t categories);

/// 1 - d / max d, for a table of disagreements, rows truth.
[[nodiscard]] std::vector<double> weights_from_disagreement(const std::vector<double>& disagreement);

/// Agreement beyond chance.
struct Kappa {
  double value = 0;
  double se = 0;           ///< Large-sample standard error.
  double se_if_chance = 0; ///< The same if there were no agreement beyond chance.
};

/// Cohen's (weighted) kappa: J. Cohen, Psychol. Bull. 70 (1968) 213; errors by J.L. Fleiss, J. Cohen and B.S.
/// Everitt, Psychol. Bull. 72 (1969) 323. Nothing for an empty table or one in which chance agrees always.
[[nodiscard]] std::optional<Kappa> cohen_kappa(const PairTable& table, const std::vector<double>& weights);

/// The value alone, for resampling.
[[nodiscard]] std::optional<double> kappa_value(const PairTable& table, const std::vector<double>& weights);

/// How two sets of grades agree, in plain shares.
struct PlainAgreement {
  double exact = 0;      ///< Share of readings on the very grade.
  double within_one = 0; ///< On it or beside it.
  double bias = 0;       ///< Mean of reading less truth, in grades.
  double bias_se = 0;    ///< Its standard error; 0 for fewer than two readings.
};

[[nodiscard]] std::optional<PlainAgreement> plain_agreement(const PairTable& table);

} // namespace matula::statistics
