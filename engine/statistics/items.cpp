#include "engine/statistics/items.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <stdexcept>

namespace matula::statistics {

namespace {

/// What all figures follow from; gathered in one pass.
struct Sums {
  explicit Sums(const ScoreTable& table)
      : item(table.items), item_squares(table.items), item_by_total(table.items) {
    for (std::size_t p = 0; p < table.persons; ++p) {
      const std::uint16_t* row = table.scores.data() + p * table.items;
      std::uint64_t sum = 0;
      for (std::size_t i = 0; i < table.items; ++i) {
        sum += row[i];
      }
      total += static_cast<double>(sum);
      total_squares += static_cast<double>(sum * sum);
      for (std::size_t i = 0; i < table.items; ++i) {
        item[i] += row[i];
        item_squares[i] += static_cast<std::uint64_t>(row[i]) * row[i];
        item_by_total[i] += row[i] * sum;
      }
    }
  }
  double total = 0;
  double total_squares = 0;
  std::vector<std::uint64_t> item;
  std::vector<std::uint64_t> item_squares;
  std::vector<std::uint64_t> item_by_total;
};

double alpha_of(double items, double item_variances, double variance) {
  return variance > 0 ? items / (items - 1) * (1 - item_variances / variance) : 0;
}

} // namespace

std::optional<TestFigures> analyse_items(const ScoreTable& table) {
  if (table.scores.size() != table.persons * table.items) {
    throw std::invalid_argument("a score for every person and item is needed");
  }
  if (table.persons < 2 || table.items < 2) {
    return std::nullopt;
  }
  const Sums sums(table);
  const double n = static_cast<double>(table.persons);
  const double k = static_cast<double>(table.items);
  TestFigures figures;
  figures.mean = sums.total / n;
  figures.variance = sums.total_squares / n - figures.mean * figures.mean;
  if (figures.variance <= 0) {
    return std::nullopt;
  }
  std::vector<double> variance(table.items);
  std::vector<double> with_total(table.items);
  figures.items.resize(table.items);
  for (std::size_t i = 0; i < table.items; ++i) {
    const double mean = static_cast<double>(sums.item[i]) / n;
    figures.items[i].mean = mean;
    variance[i] = static_cast<double>(sums.item_squares[i]) / n - mean * mean;
    with_total[i] = static_cast<double>(sums.item_by_total[i]) / n - mean * figures.mean;
  }
  const double all_variances = std::accumulate(variance.begin(), variance.end(), 0.0);
  figures.alpha = alpha_of(k, all_variances, figures.variance);
  figures.error = std::sqrt(figures.variance * (1 - figures.alpha));
  for (std::size_t i = 0; i < table.items; ++i) {
    const double rest = figures.variance + variance[i] - 2 * with_total[i];
    const double both = variance[i] * rest;
    figures.items[i].with_rest = both > 0 ? (with_total[i] - variance[i]) / std::sqrt(both) : 0;
    figures.items[i].alpha_without = table.items > 2 ? alpha_of(k - 1, all_variances - variance[i], rest) : 0;
  }
  return figures;
}

double correlation_at_most(double correlation, std::size_t persons, double deviate) {
  constexpr std::size_t fewest = 4;
  if (persons < fewest) {
    return 1;
  }
  constexpr double nearly_one = 0.999999; // artanh has no value at 1.
  const double z = std::atanh(std::clamp(correlation, -nearly_one, nearly_one));
  return std::tanh(z + deviate / std::sqrt(static_cast<double>(persons - 3)));
}

double kr21(std::size_t items, double mean, double variance) {
  const double k = static_cast<double>(items);
  return k / (k - 1) * (1 - mean * (k - mean) / (k * variance));
}

} // namespace matula::statistics
