#include "engine/statistics/agreement.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <stdexcept>

namespace matula::statistics {

namespace {

std::size_t distance(std::size_t a, std::size_t b) {
  return a > b ? a - b : b - a;
}

/// Shares of the cells, the rows and the columns.
struct Shares {
  explicit Shares(const PairTable& table)
      : cells(table.counts()), rows(table.categories()), columns(table.categories()) {
    const double n = table.total();
    const std::size_t q = table.categories();
    for (std::size_t i = 0; i < q; ++i) {
      for (std::size_t j = 0; j < q; ++j) {
        double& cell = cells[i * q + j];
        cell /= n;
        rows[i] += cell;
        columns[j] += cell;
      }
    }
  }
  std::vector<double> cells;
  std::vector<double> rows;
  std::vector<double> columns;
};

struct Observed {
  double by_both = 0;   ///< Weighted agreement.
  double by_chance = 0; ///< The same if reading and truth had nothing to do with each other.
};

Observed observe(const Shares& shares, const std::vector<double>& weights) {
  Observed seen;
  const std::size_t q = shares.rows.size();
  for (std::size_t i = 0; i < q; ++i) {
    for (std::size_t j = 0; j < q; ++j) {
      seen.by_both += weights[i * q + j] * shares.cells[i * q + j];
      seen.by_chance += weights[i * q + j] * shares.rows[i] * shares.columns[j];
    }
  }
  return seen;
}

bool chance_leaves_nothing(const Observed& seen) {
  constexpr double rounding = 1e-14;
  return 1 - seen.by_chance < rounding;
}

void require_weights(const PairTable& table, const std::vector<double>& weights) {
  if (weights.size() != table.categories() * table.categories()) {
    throw std::invalid_argument("weights of another scale");
  }
}

} // namespace

void PairTable::add(std::size_t truth, std::size_t reading, double times) {
  if (truth >= categories_ || reading >= categories_) {
    throw std::out_of_range("a grade the scale does not have");
  }
  counts_[truth * categories_ + reading] += times;
}

void PairTable::operator+=(const PairTable& other) {
  if (other.categories_ != categories_) {
    throw std::invalid_argument("tables of two scales");
  }
  std::transform(counts_.begin(), counts_.end(), other.counts_.begin(), counts_.begin(), std::plus<>());
}

double PairTable::total() const {
  return std::accumulate(counts_.begin(), counts_.end(), 0.0);
}

PairTable count_pairs(std::span<const std::uint8_t> truth, std::span<const std::uint8_t> read,
                      std::size_t categories) {
  if (truth.size() != read.size()) {
    throw std::invalid_argument("as many readings as truths are needed");
  }
  // Counted by all values of a byte in two tables in turn: equal pairs in a row would wait for each other's
  // sum.
  constexpr std::size_t byte_values = 256;
  std::vector<std::uint32_t> even(byte_values * byte_values);
  std::vector<std::uint32_t> odd(byte_values * byte_values);
  const std::size_t n = truth.size();
  std::size_t i = 0;
  for (; i + 1 < n; i += 2) {
    ++even[truth[i] * byte_values + read[i]];
    ++odd[truth[i + 1] * byte_values + read[i + 1]];
  }
  if (i < n) {
    ++even[truth[i] * byte_values + read[i]];
  }
  PairTable table(categories);
  for (std::size_t t = 0; t < byte_values; ++t) {
    for (std::size_t r = 0; r < byte_values; ++r) {
      const std::uint32_t here = even[t * byte_values + r] + odd[t * byte_values + r];
      if (here != 0) {
        table.add(t, r, here);
      }
    }
  }
  return table;
}

std::vector<double> agreement_weights(Weighting weighting, std::size_t categories) {
  std::vector<double> weights(categories * categories);
  const double most = categories > 1 ? static_cast<double>(categories - 1) : 1;
  for (std::size_t i = 0; i < categories; ++i) {
    for (std::size_t j = 0; j < categories; ++j) {
      const double off = static_cast<double>(distance(i, j)) / most;
      weights[i * categories + j] = weighting == Weighting::Nominal  ? (i == j ? 1.0 : 0.0)
                                    : weighting == Weighting::Linear ? 1 - off
                                                                     : 1 - off * off;
    }
  }
  return weights;
}

std::vector<double> weights_from_disagreement(const std::vector<double>& disagreement) {
  const double most = *std::max_element(disagreement.begin(), disagreement.end());
  std::vector<double> weights;
  weights.reserve(disagreement.size());
  for (const double d : disagreement) {
    weights.push_back(1 - d / most);
  }
  return weights;
}

std::optional<double> kappa_value(const PairTable& table, const std::vector<double>& weights) {
  require_weights(table, weights);
  if (table.total() <= 0) {
    return std::nullopt;
  }
  const Observed seen = observe(Shares(table), weights);
  if (chance_leaves_nothing(seen)) {
    return std::nullopt;
  }
  return (seen.by_both - seen.by_chance) / (1 - seen.by_chance);
}

std::optional<Kappa> cohen_kappa(const PairTable& table, const std::vector<double>& weights) {
  const auto value = kappa_value(table, weights);
  if (!value) {
    return std::nullopt;
  }
  const std::size_t q = table.categories();
  const Shares shares(table);
  const Observed seen = observe(shares, weights);
  std::vector<double> row_mean(q);    // Mean weight of a row under the columns' shares.
  std::vector<double> column_mean(q); // And of a column under the rows'.
  for (std::size_t i = 0; i < q; ++i) {
    for (std::size_t j = 0; j < q; ++j) {
      row_mean[i] += weights[i * q + j] * shares.columns[j];
      column_mean[j] += weights[i * q + j] * shares.rows[i];
    }
  }
  double sum = 0;
  double sum_if_chance = 0;
  for (std::size_t i = 0; i < q; ++i) {
    for (std::size_t j = 0; j < q; ++j) {
      const double means = row_mean[i] + column_mean[j];
      const double spread = weights[i * q + j] - means * (1 - *value);
      const double spread_if_chance = weights[i * q + j] - means;
      sum += shares.cells[i * q + j] * spread * spread;
      sum_if_chance += shares.rows[i] * shares.columns[j] * spread_if_chance * spread_if_chance;
    }
  }
  const double off = *value - seen.by_chance * (1 - *value);
  const double below = table.total() * (1 - seen.by_chance) * (1 - seen.by_chance);
  const auto root = [below](double over) { return std::sqrt(std::max(over, 0.0) / below); };
  return Kappa{*value, root(sum - off * off), root(sum_if_chance - seen.by_chance * seen.by_chance)};
}

std::optional<PlainAgreement> plain_agreement(const PairTable& table) {
  const double n = table.total();
  if (n <= 0) {
    return std::nullopt;
  }
  PlainAgreement plain;
  double squares = 0;
  for (std::size_t i = 0; i < table.categories(); ++i) {
    for (std::size_t j = 0; j < table.categories(); ++j) {
      const double share = table.count(i, j) / n;
      const double off = static_cast<double>(j) - static_cast<double>(i);
      plain.exact += i == j ? share : 0;
      plain.within_one += distance(i, j) <= 1 ? share : 0;
      plain.bias += share * off;
      squares += share * off * off;
    }
  }
  if (n > 1) {
    plain.bias_se = std::sqrt(std::max(squares - plain.bias * plain.bias, 0.0) / (n - 1));
  }
  return plain;
}

} // namespace matula::statistics
