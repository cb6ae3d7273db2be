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

/// All of a student's table that kappa asks for: the weighted agreement, and how often each grade was there
/// and was read. A draw then adds 14 numbers a student for six grades instead of 36.
class Essence {
public:
  Essence(const std::vector<PairTable>& by_student, const std::vector<double>& weights)
      : q_(by_student.front().categories()), width_((2 * q_ + 2) / 2 * 2), students_(by_student.size()),
        weights_(weights), flat_(width_ * students_) {
    for (std::size_t s = 0; s < students_; ++s) {
      double* row = flat_.data() + s * width_;
      for (std::size_t i = 0; i < q_; ++i) {
        for (std::size_t j = 0; j < q_; ++j) {
          const double count = by_student[s].count(i, j);
          row[0] += weights[i * q_ + j] * count;
          row[1 + i] += count;
          row[1 + q_ + j] += count;
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

  [[nodiscard]] std::optional<double> kappa(const std::vector<double>& sum) const {
    const double n = std::accumulate(sum.begin() + 1, sum.begin() + 1 + static_cast<std::ptrdiff_t>(q_), 0.0);
    double chance = 0;
    for (std::size_t i = 0; i < q_; ++i) {
      for (std::size_t j = 0; j < q_; ++j) {
        chance += weights_[i * q_ + j] * sum[1 + i] * sum[1 + q_ + j];
      }
    }
    chance /= n * n;
    constexpr double rounding = 1e-14;
    if (!(n > 0) || 1 - chance < rounding) {
      return std::nullopt;
    }
    return (sum[0] / n - chance) / (1 - chance);
  }

  [[nodiscard]] std::optional<double> gwet(const std::vector<double>& sum) const {
    const double n = std::accumulate(sum.begin() + 1, sum.begin() + 1 + static_cast<std::ptrdiff_t>(q_), 0.0);
    double spread = 0;
    for (std::size_t k = 0; k < q_; ++k) {
      const double share = (sum[1 + k] + sum[1 + q_ + k]) / (2 * n);
      spread += share * (1 - share);
    }
    const double all = std::accumulate(weights_.begin(), weights_.end(), 0.0);
    const double chance = all / static_cast<double>(q_ * (q_ - 1)) * spread;
    if (!(n > 0) || chance >= 1) {
      return std::nullopt;
    }
    return (sum[0] / n - chance) / (1 - chance);
  }

  [[nodiscard]] std::vector<double> all() const {
    std::vector<double> sum(width_);
    for (std::size_t i = 0; i < flat_.size(); ++i) {
      sum[i % width_] += flat_[i];
    }
    return sum;
  }

private:
  std::size_t q_;
  std::size_t width_; ///< Of a student's row, even.
  std::size_t students_;
  const std::vector<double>& weights_;
  std::vector<double> flat_;
};

/// Middle `coverage` of what `measure` makes of students drawn anew.
template <class Measure>
std::optional<Interval> interval(const std::vector<PairTable>& by_student, const std::vector<double>& weights,
                                 int draws, std::uint64_t seed, double coverage, Measure measure) {
  if (by_student.size() < 2 || draws < 1) {
    return std::nullopt;
  }
  for (const PairTable& table : by_student) {
    if (weights.size() != table.categories() * table.categories()) {
      throw std::invalid_argument("weights of another scale");
    }
  }
  const Essence students(by_student, weights);
  std::mt19937_64 source(seed);
  std::vector<double> values;
  values.reserve(static_cast<std::size_t>(draws));
  std::vector<double> sum;
  for (int draw = 0; draw < draws; ++draw) {
    students.draw(source, sum);
    const auto value = measure(students, sum);
    if (!value) {
      return std::nullopt;
    }
    values.push_back(*value);
  }
  std::sort(values.begin(), values.end());
  const double tail = (1 - coverage) / 2;
  return Interval{quantile(values, tail), quantile(values, 1 - tail)};
}

} // namespace

std::optional<Interval> kappa_interval(const std::vector<PairTable>& by_student,
                                       const std::vector<double>& weights, int draws, std::uint64_t seed,
                                       double coverage) {
  return interval(
      by_student, weights, draws, seed, coverage,
      [](const Essence& students, const std::vector<double>& sum) { return students.kappa(sum); });
}

std::optional<Interval> gwet_interval(const std::vector<PairTable>& by_student,
                                      const std::vector<double>& weights, int draws, std::uint64_t seed,
                                      double coverage) {
  return interval(by_student, weights, draws, seed, coverage,
                  [](const Essence& students, const std::vector<double>& sum) { return students.gwet(sum); });
}

std::optional<double> gwet_value(const PairTable& table, const std::vector<double>& weights) {
  if (weights.size() != table.categories() * table.categories()) {
    throw std::invalid_argument("weights of another scale");
  }
  const std::vector<PairTable> one{table};
  const Essence all(one, weights);
  return table.total() > 0 ? all.gwet(all.all()) : std::nullopt;
}

} // namespace matula::statistics
