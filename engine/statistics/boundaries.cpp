#include "engine/statistics/boundaries.hpp"

#include "engine/statistics/normal.hpp"

#include <Eigen/Dense>

#include <algorithm>
#include <cmath>
#include <stdexcept>
#include <thread>

namespace matula::statistics {

namespace {

// Unknowns: place of the middle line, logarithms of the four gaps, logarithm of the spread.
constexpr int unknowns = 6;
using Vector = Eigen::Matrix<double, unknowns, 1>;
using Matrix = Eigen::Matrix<double, unknowns, unknowns>;

struct Lines {
  std::array<double, lines> at{};
  std::array<double, 4> gap{};
  double spread = 1;
};

Lines lines_of(const Vector& p) {
  Lines l;
  for (int i = 0; i < 4; ++i) {
    l.gap[static_cast<std::size_t>(i)] = std::exp(p[i + 1]);
  }
  l.at[2] = reference_lines[2] + p[0];
  l.at[1] = l.at[2] - l.gap[1];
  l.at[0] = l.at[1] - l.gap[0];
  l.at[3] = l.at[2] + l.gap[2];
  l.at[4] = l.at[3] + l.gap[3];
  l.spread = std::exp(p[5]);
  return l;
}

/// Derivatives of the five lines and of the log spread by the unknowns.
Matrix slopes(const Lines& l) {
  Matrix j = Matrix::Zero();
  j.block<lines, 1>(0, 0).setOnes();
  j(0, 1) = -l.gap[0];
  j(0, 2) = j(1, 2) = -l.gap[1];
  j(3, 3) = j(4, 3) = l.gap[2];
  j(4, 4) = l.gap[3];
  j(5, 5) = 1;
  return j;
}

/// Chances of the six grades at one intensity, and what they are made of.
struct Chances {
  Chances(const Lines& l, double x, std::size_t words) {
    for (std::size_t k = 0; k + 1 < words; ++k) {
      z[k] = (l.at[k] - x) / l.spread;
      const NormalAt at = normal_at(z[k]);
      density[k] = at.density;
      tail[k] = at.tail;
    }
    chance[0] = std::max(z[0] < 0 ? tail[0] : 1 - tail[0], smallest);
    const std::size_t last = words - 2;
    chance[last + 1] = std::max(z[last] > 0 ? tail[last] : 1 - tail[last], smallest);
    for (std::size_t g = 1; g <= last; ++g) {
      chance[g] = std::max(between(g), smallest);
    }
  }
  /// From whichever tail is the smaller, so that nothing is lost by subtraction.
  [[nodiscard]] double between(std::size_t g) const {
    if (z[g - 1] > 0) {
      return tail[g - 1] - tail[g];
    }
    return z[g] < 0 ? tail[g] - tail[g - 1] : 1 - tail[g] - tail[g - 1];
  }
  static constexpr double smallest = 1e-300;
  std::array<double, lines> z{};
  std::array<double, lines> density{};
  std::array<double, lines> tail{}; ///< Beyond z, on the side away from 0.
  std::array<double, grades> chance{};
};

/// Value, slope and curvature (with the sign turned) of the log posterior at a place.
struct Place {
  double log_posterior = 0;
  Vector slope;
  Matrix curvature;
};

class Fit {
public:
  Fit(std::span<const GradedReading> readings, const BoundaryPrior& prior, std::size_t words)
      : readings_(readings), words_(words) {
    mean_ << 0, 0, 0, 0, 0, prior.log_spread;
    Vector sd;
    sd << prior.shift_sd, prior.log_gap_sd, prior.log_gap_sd, prior.log_gap_sd, prior.log_gap_sd,
        prior.log_spread_sd;
    precision_ = prior.none ? Vector(Vector::Zero()) : Vector(sd.cwiseInverse().cwiseAbs2());
  }

  [[nodiscard]] Vector start() const { return mean_; }

  /// As the readings are: only the lines beside the grade that was read matter.
  [[nodiscard]] Place observed(const Vector& p) const {
    const Lines l = lines_of(p);
    Vector slope = Vector::Zero();
    Matrix curvature = Matrix::Zero();
    double log_chance = 0;
    for (const GradedReading& reading : readings_) {
      log_chance += add_observed(l, reading, words_, slope, curvature);
    }
    slope.head<lines>() /= l.spread;
    curvature.topRows<lines>() /= l.spread;
    curvature.leftCols<lines>() /= l.spread;
    const Matrix j = slopes(l);
    const Vector off = p - mean_;
    Place place;
    place.log_posterior = log_chance - 0.5 * off.cwiseAbs2().dot(precision_);
    place.slope = j.transpose() * slope - precision_.cwiseProduct(off);
    place.curvature = j.transpose() * curvature * j;
    // A gap is an exponential: it bends by as much as it slopes.
    for (Eigen::Index unknown = 1; unknown < 5; ++unknown) {
      place.curvature(unknown, unknown) -= j.col(unknown).head<lines>().dot(slope.head<lines>());
    }
    place.curvature.diagonal() += precision_;
    return place;
  }

  /// As it is to be expected of readings at these intensities (Fisher's information, with the prior's).
  [[nodiscard]] Matrix expected(const Vector& p) const {
    const Lines l = lines_of(p);
    Matrix information = Matrix::Zero();
    for (const GradedReading& reading : readings_) {
      add_expected(Chances(l, reading.intensity, words_), words_, information);
    }
    information.topRows<lines>() /= l.spread;
    information.leftCols<lines>() /= l.spread;
    const Matrix j = slopes(l);
    Matrix curvature = j.transpose() * information * j;
    curvature.diagonal() += precision_;
    return curvature;
  }

private:
  /// One of the two lines a grade lies between, seen from a reading.
  struct Edge {
    double z = 0;
    NormalAt at;
  };

  /// P(Z below the edge).
  static double under(const Edge& edge) { return edge.z < 0 ? edge.at.tail : 1 - edge.at.tail; }
  static double over(const Edge& edge) { return edge.z > 0 ? edge.at.tail : 1 - edge.at.tail; }

  /// Of a grade with a line on either side, from the smaller tails.
  static double between(const Edge& below, const Edge& above) {
    return below.z > 0 ? below.at.tail - above.at.tail : under(above) - under(below);
  }

  /// Adds slope and curvature, lines in spreads; gives the logarithm of the chance.
  static double add_observed(const Lines& l, const GradedReading& reading, std::size_t words, Vector& slope,
                             Matrix& curvature) {
    const auto grade = static_cast<std::size_t>(reading.grade);
    const std::size_t top = static_cast<std::size_t>(std::max(reading.grade, reading.at_most));
    const auto above_row = static_cast<Eigen::Index>(top);
    const Eigen::Index below_row = static_cast<Eigen::Index>(grade) - 1;
    constexpr Eigen::Index spread = 5;
    Edge below;
    Edge above;
    const bool has_below = grade > 0;
    const bool has_above = top + 1 < words;
    if (has_below) {
      below.z = (l.at[grade - 1] - reading.intensity) / l.spread;
      below.at = normal_at(below.z);
    }
    if (has_above) {
      above.z = (l.at[top] - reading.intensity) / l.spread;
      above.at = normal_at(above.z);
    }
    const double from_below = has_above ? under(above) : 1.0;
    const double chance = !has_below ? from_below : !has_above ? over(below) : between(below, above);
    const double safe = std::max(chance, Chances::smallest);
    const double a = below.at.density / safe; // 0 where there is no such line.
    const double b = above.at.density / safe;
    const double by_spread = a * below.z - b * above.z;
    // Second derivatives of the logarithm by the two places, then by the line and by the logarithm of the
    // spread.
    const double aa = a * a - a * below.z;
    const double bb = b * b + b * above.z;
    const double ab = -a * b;
    if (has_below) {
      slope[below_row] -= a;
      curvature(below_row, below_row) += aa;
      const double with_spread = -(aa * below.z + ab * above.z) - a;
      curvature(below_row, spread) += with_spread;
      curvature(spread, below_row) += with_spread;
    }
    if (has_above) {
      slope[above_row] += b;
      curvature(above_row, above_row) += bb;
      const double with_spread = -(bb * above.z + ab * below.z) + b;
      curvature(above_row, spread) += with_spread;
      curvature(spread, above_row) += with_spread;
    }
    if (has_below && has_above) {
      curvature(below_row, above_row) += ab;
      curvature(above_row, below_row) += ab;
    }
    slope[spread] += by_spread;
    curvature(spread, spread) +=
        aa * below.z * below.z + bb * above.z * above.z + 2 * ab * below.z * above.z + by_spread;
    return std::log(safe);
  }

  static void add_expected(const Chances& at, std::size_t words, Matrix& information) {
    constexpr double least = 1e-14; // A grade so unlikely adds no information.
    constexpr Eigen::Index spread = 5;
    std::array<double, grades> inverse{};
    std::array<double, grades> relative{}; // Derivative of each chance by the log spread, over the chance.
    double below = 0;
    for (std::size_t g = 0; g < words; ++g) {
      inverse[g] = 1 / std::max(at.chance[g], least);
      const double above = g + 1 == words ? 0 : at.z[g] * at.density[g];
      relative[g] = (below - above) * inverse[g];
      information(spread, spread) += (below - above) * relative[g];
      below = above;
    }
    for (std::size_t k = 0; k + 1 < words; ++k) {
      const auto row = static_cast<Eigen::Index>(k);
      const double f = at.density[k];
      information(row, row) += f * f * (inverse[k] + inverse[k + 1]);
      information(row, spread) += f * (relative[k] - relative[k + 1]);
      information(spread, row) += f * (relative[k] - relative[k + 1]);
      if (k > 0) {
        information(row, row - 1) -= f * at.density[k - 1] * inverse[k];
        information(row - 1, row) -= f * at.density[k - 1] * inverse[k];
      }
    }
  }

  std::span<const GradedReading> readings_;
  std::size_t words_;
  Vector mean_;
  Vector precision_;
};

/// Newton's step; where the log posterior is not curved downwards, that of Fisher's scoring.
Vector uphill(const Fit& fit, const Vector& p, const Place& here) {
  const Eigen::LLT<Matrix> newton(here.curvature);
  if (newton.info() == Eigen::Success) {
    return newton.solve(here.slope);
  }
  return fit.expected(p).ldlt().solve(here.slope);
}

Boundaries describe(const Fit& fit, const Vector& p, double log_posterior, int steps, std::size_t words) {
  const Lines l = lines_of(p);
  const Matrix j = slopes(l);
  const Matrix covariance = j * fit.expected(p).ldlt().solve(j.transpose());
  Boundaries found;
  found.line = l.at;
  found.spread = l.spread;
  found.log_posterior = log_posterior;
  found.steps = steps;
  found.words = words;
  const auto used = static_cast<double>(words - 1);
  double shift_variance = 0;
  for (std::size_t k = 0; k + 1 < words; ++k) {
    const auto row = static_cast<Eigen::Index>(k);
    found.shift += (l.at[k] - reference_lines[k]) / used;
    found.line_se[k] = std::sqrt(covariance(row, row));
    for (Eigen::Index other = 0; other + 1 < static_cast<Eigen::Index>(words); ++other) {
      shift_variance += covariance(row, other) / (used * used);
    }
  }
  found.shift_se = std::sqrt(shift_variance);
  return found;
}

} // namespace

std::optional<Boundaries> fit_boundaries(std::span<const GradedReading> readings, const BoundaryPrior& prior,
                                         std::size_t words) {
  if (words < 2 || words > grades) {
    throw std::invalid_argument("a scale has two to six words");
  }
  if (std::any_of(readings.begin(), readings.end(), [words](const GradedReading& r) {
        return r.grade < 0 || std::max(r.grade, r.at_most) >= static_cast<int>(words);
      })) {
    throw std::out_of_range("a grade the scale does not have");
  }
  constexpr int most_steps = 100;
  constexpr int most_halvings = 20;
  constexpr double settled = 1e-13;  // Of what a step can still gain.
  constexpr double rounding = 1e-12; // Of a sum of logarithms.
  const Fit fit(readings, prior, words);
  Vector p = fit.start();
  Place here = fit.observed(p);
  for (int step = 1; step <= most_steps; ++step) {
    Vector move = uphill(fit, p, here);
    if (!move.allFinite()) {
      return std::nullopt;
    }
    if (here.slope.dot(move) < settled) {
      return describe(fit, p, here.log_posterior, step, words);
    }
    Place there = fit.observed(p + move);
    for (int halving = 0; halving < most_halvings && !(there.log_posterior >= here.log_posterior - rounding);
         ++halving) {
      move /= 2;
      there = fit.observed(p + move);
    }
    if (!(there.log_posterior >= here.log_posterior - rounding)) {
      return describe(fit, p, here.log_posterior, step, words);
    }
    p += move;
    here = there;
  }
  return std::nullopt;
}

std::vector<std::optional<Boundaries>>
fit_boundaries_of_all(const std::vector<std::span<const GradedReading>>& readers, int threads,
                      const BoundaryPrior& prior) {
  std::vector<std::optional<Boundaries>> fitted(readers.size());
  const std::size_t workers = std::min(static_cast<std::size_t>(std::max(threads, 1)), readers.size());
  std::vector<std::thread> running;
  const auto work = [&](std::size_t from) {
    for (std::size_t i = from; i < readers.size(); i += workers) {
      fitted[i] = fit_boundaries(readers[i], prior);
    }
  };
  for (std::size_t worker = 1; worker < workers; ++worker) {
    running.emplace_back(work, worker);
  }
  if (workers > 0) {
    work(0);
  }
  for (std::thread& one : running) {
    one.join();
  }
  return fitted;
}

double chance_of_shift(double shift, double se, double least) {
  return normal_below((shift - least) / se) + normal_below((-least - shift) / se);
}

int readings_near(std::span<const GradedReading> readings, std::size_t line, double near) {
  return static_cast<int>(std::count_if(readings.begin(), readings.end(), [&](const GradedReading& reading) {
    return std::abs(reading.intensity - reference_lines[line]) <= near;
  }));
}

bool may_speak_of_line(const Boundaries& fitted, std::size_t line, std::span<const GradedReading> readings,
                       const SpeakingRule& rule) {
  const double off = fitted.line[line] - reference_lines[line];
  return readings_near(readings, line, rule.near) >= rule.least_near &&
         chance_of_shift(off, rule.widening * fitted.line_se[line], rule.least_shift) > rule.least_chance;
}

} // namespace matula::statistics
