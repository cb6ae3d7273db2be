#include "engine/statistics/resample.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>
#include <random>
#include <stdexcept>

namespace matula::statistics {

namespace {

/// Two numbers evenly from 0 to below `end`; the standard's own distributions differ from library to library.
struct Two {
  std::size_t one;
  std::size_t other;
};
Two pick_two(std::mt19937_64& source, std::size_t end) {
  constexpr int half_word = 32;
  constexpr std::uint64_t low = 0xffffffff;
  const std::uint64_t word = source();
  return {static_cast<std::size_t>(((word >> half_word) * end) >> half_word),
          static_cast<std::size_t>(((word & low) * end) >> half_word)};
}

/// Between the neighbours, as R's type 7 and NumPy do.
double quantile(const std::vector<double>& sorted, double share) {
  const double place = share * static_cast<double>(sorted.size() - 1);
  const auto below = static_cast<std::size_t>(place);
  const std::size_t above = std::min(below + 1, sorted.size() - 1);
  return sorted[below] + (place - static_cast<double>(below)) * (sorted[above] - sorted[below]);
}

/// All of a student's table that the coefficients ask for: the agreement by each weighting, and how often
/// each grade was there and was read. A draw then adds 14 numbers a student for six grades instead of 36.
class Essence {
public:
  Essence(const std::vector<PairTable>& by_student, const std::vector<std::vector<double>>& weightings)
      : q_(by_student.front().categories()), weightings_(weightings.size()),
        width_((weightings_ + 2 * q_ + 1) / 2 * 2), students_(by_student.size()), flat_(width_ * students_) {
    for (std::size_t s = 0; s < students_; ++s) {
      double* row = flat_.data() + s * width_;
      for (std::size_t i = 0; i < q_; ++i) {
        for (std::size_t j = 0; j < q_; ++j) {
          const double count = by_student[s].count(i, j);
          for (std::size_t w = 0; w < weightings_; ++w) {
            row[w] += weightings[w][i * q_ + j] * count;
          }
          row[weightings_ + i] += count;
          row[weightings_ + q_ + j] += count;
        }
      }
    }
  }

  /// Adds up as many students as there are, each drawn at random.
  void draw(std::mt19937_64& source, std::vector<double>& sum) const {
    constexpr std::size_t six_grades = 14;
    std::array<double, six_grades> fixed{};
    sum.assign(width_, 0.0);
    for (std::size_t i = 0; i < students_; i += 2) {
      const Two two = pick_two(source, students_);
      const double* one = flat_.data() + two.one * width_;
      const double* other = i + 1 < students_ ? flat_.data() + two.other * width_ : nullptr;
      if (width_ == six_grades && other != nullptr) {
        for (std::size_t c = 0; c < six_grades; ++c) {
          fixed[c] += one[c] + other[c]; // Their number is known beforehand: the compiler keeps them at hand.
        }
        continue;
      }
      for (std::size_t c = 0; c < width_; ++c) {
        sum[c] += one[c] + (other != nullptr ? other[c] : 0);
      }
    }
    for (std::size_t c = 0; width_ == six_grades && c < six_grades; ++c) {
      sum[c] += fixed[c];
    }
  }

  /// Of summed rows: the coefficient by the weighting of this number, whose weights are given again.
  [[nodiscard]] std::optional<double> kappa(const std::vector<double>& sum, std::size_t weighting,
                                            const std::vector<double>& weights) const {
    const double n = readings(sum);
    double chance = 0;
    for (std::size_t i = 0; i < q_; ++i) {
      for (std::size_t j = 0; j < q_; ++j) {
        chance += weights[i * q_ + j] * there(sum, i) * read(sum, j);
      }
    }
    chance /= n * n;
    constexpr double rounding = 1e-14;
    if (!(n > 0) || 1 - chance < rounding) {
      return std::nullopt;
    }
    return (sum[weighting] / n - chance) / (1 - chance);
  }

  [[nodiscard]] std::optional<double> gwet(const std::vector<double>& sum, std::size_t weighting,
                                           const std::vector<double>& weights) const {
    const double n = readings(sum);
    double spread = 0;
    for (std::size_t k = 0; k < q_; ++k) {
      const double share = (there(sum, k) + read(sum, k)) / (2 * n);
      spread += share * (1 - share);
    }
    const double all = std::accumulate(weights.begin(), weights.end(), 0.0);
    const double chance = all / static_cast<double>(q_ * (q_ - 1)) * spread;
    if (!(n > 0) || chance >= 1) {
      return std::nullopt;
    }
    return (sum[weighting] / n - chance) / (1 - chance);
  }

  [[nodiscard]] std::vector<double> all() const {
    std::vector<double> sum(width_);
    for (std::size_t i = 0; i < flat_.size(); ++i) {
      sum[i % width_] += flat_[i];
    }
    return sum;
  }

private:
  [[nodiscard]] double there(const std::vector<double>& sum, std::size_t grade) const {
    return sum[weightings_ + grade];
  }
  [[nodiscard]] double read(const std::vector<double>& sum, std::size_t grade) const {
    return sum[weightings_ + q_ + grade];
  }
  [[nodiscard]] double readings(const std::vector<double>& sum) const {
    const auto first = sum.begin() + static_cast<std::ptrdiff_t>(weightings_);
    return std::accumulate(first, first + static_cast<std::ptrdiff_t>(q_), 0.0);
  }

  std::size_t q_;
  std::size_t weightings_;
  std::size_t width_; ///< Of a student's row, even.
  std::size_t students_;
  std::vector<double> flat_;
};

void require_weights(const PairTable& table, const std::vector<double>& weights) {
  if (weights.size() != table.categories() * table.categories()) {
    throw std::invalid_argument("weights of another scale");
  }
}

/// The weightings that differ, and which of them each coefficient goes by.
struct Weightings {
  explicit Weightings(const std::vector<Coefficient>& coefficients) {
    for (const Coefficient& one : coefficients) {
      const auto found = std::find(all.begin(), all.end(), one.weights);
      of.push_back(static_cast<std::size_t>(found - all.begin()));
      if (found == all.end()) {
        all.push_back(one.weights);
      }
    }
  }
  std::vector<std::vector<double>> all;
  std::vector<std::size_t> of;
};

std::optional<Interval> middle(std::vector<double>& values, double coverage) {
  std::sort(values.begin(), values.end());
  const double tail = (1 - coverage) / 2;
  return Interval{quantile(values, tail), quantile(values, 1 - tail)};
}

} // namespace

std::vector<std::optional<Interval>> intervals(const std::vector<PairTable>& by_student,
                                               const std::vector<Coefficient>& coefficients, int draws,
                                               std::uint64_t seed, double coverage) {
  std::vector<std::optional<Interval>> found(coefficients.size());
  if (by_student.size() < 2 || draws < 1) {
    return found;
  }
  for (const PairTable& table : by_student) {
    for (const Coefficient& one : coefficients) {
      require_weights(table, one.weights);
    }
  }
  const Weightings weightings(coefficients);
  const Essence students(by_student, weightings.all);
  std::mt19937_64 source(seed);
  std::vector<std::vector<double>> values(coefficients.size());
  std::vector<double> sum;
  for (int draw = 0; draw < draws; ++draw) {
    students.draw(source, sum);
    for (std::size_t c = 0; c < coefficients.size(); ++c) {
      const Coefficient& one = coefficients[c];
      const auto value = one.kind == Coefficient::Kind::Kappa
                             ? students.kappa(sum, weightings.of[c], one.weights)
                             : students.gwet(sum, weightings.of[c], one.weights);
      if (value) {
        values[c].push_back(*value);
      }
    }
  }
  for (std::size_t c = 0; c < coefficients.size(); ++c) {
    if (values[c].size() == static_cast<std::size_t>(draws)) {
      found[c] = middle(values[c], coverage);
    }
  }
  return found;
}

std::optional<Interval> kappa_interval(const std::vector<PairTable>& by_student,
                                       const std::vector<double>& weights, int draws, std::uint64_t seed,
                                       double coverage) {
  return intervals(by_student, {{Coefficient::Kind::Kappa, weights}}, draws, seed, coverage).front();
}

std::optional<Interval> gwet_interval(const std::vector<PairTable>& by_student,
                                      const std::vector<double>& weights, int draws, std::uint64_t seed,
                                      double coverage) {
  return intervals(by_student, {{Coefficient::Kind::Gwet, weights}}, draws, seed, coverage).front();
}

std::optional<double> gwet_value(const PairTable& table, const std::vector<double>& weights) {
  require_weights(table, weights);
  const Essence all({table}, {weights});
  return table.total() > 0 ? all.gwet(all.all(), 0, weights) : std::nullopt;
}

} // namespace matula::statistics
