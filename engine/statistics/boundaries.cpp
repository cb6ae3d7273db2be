#include "engine/statistics/boundaries.hpp"

#include <Eigen/Dense>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <stdexcept>

namespace matula::statistics {

namespace {

// Unknowns: place of the middle line, logarithms of the four gaps, logarithm of the spread.
constexpr int unknowns = 6;
using Vector = Eigen::Matrix<double, unknowns, 1>;
using Matrix = Eigen::Matrix<double, unknowns, unknowns>;

double normal_density(double z) {
  return std::exp(-0.5 * z * z) * (std::numbers::inv_sqrtpi / std::numbers::sqrt2);
}

/// P(Z <= z); exact in the lower tail.
double normal_below(double z) {
  return 0.5 * std::erfc(-z / std::numbers::sqrt2);
}

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
  Chances(const Lines& l, double x) {
    for (std::size_t k = 0; k < lines; ++k) {
      z[k] = (l.at[k] - x) / l.spread;
      density[k] = normal_density(z[k]);
    }
    for (std::size_t g = 0; g < grades; ++g) {
      chance[g] = std::max(between(g), smallest);
    }
  }
  /// From whichever tail is the smaller, so that nothing is lost by subtraction.
  [[nodiscard]] double between(std::size_t g) const {
    if (g == 0) {
      return normal_below(z[0]);
    }
    if (g == lines) {
      return normal_below(-z[lines - 1]);
    }
    return z[g - 1] > 0 ? normal_below(-z[g - 1]) - normal_below(-z[g])
                        : normal_below(z[g]) - normal_below(z[g - 1]);
  }
  static constexpr double smallest = 1e-300;
  std::array<double, lines> z{};
  std::array<double, lines> density{};
  std::array<double, grades> chance{};
};

class Fit {
public:
  Fit(std::span<const GradedReading> readings, const BoundaryPrior& prior) : readings_(readings) {
    mean_ << 0, 0, 0, 0, 0, prior.log_spread;
    Vector sd;
    sd << prior.shift_sd, prior.log_gap_sd, prior.log_gap_sd, prior.log_gap_sd, prior.log_gap_sd,
        prior.log_spread_sd;
    precision_ = prior.none ? Vector(Vector::Zero()) : Vector(sd.cwiseInverse().cwiseAbs2());
  }

  [[nodiscard]] Vector start() const { return mean_; }

  [[nodiscard]] double log_posterior(const Vector& p) const {
    const Lines l = lines_of(p);
    double sum = 0;
    for (const GradedReading& reading : readings_) {
      const auto g = static_cast<std::size_t>(reading.grade);
      // Only the chance of the grade that was read is needed here.
      const double above = g == lines ? 0 : (l.at[g] - reading.intensity) / l.spread;
      const double below = g == 0 ? 0 : (l.at[g - 1] - reading.intensity) / l.spread;
      double chance = 0;
      if (g == 0) {
        chance = normal_below(above);
      } else if (g == lines) {
        chance = normal_below(-below);
      } else {
        chance = below > 0 ? normal_below(-below) - normal_below(-above)
                           : normal_below(above) - normal_below(below);
      }
      sum += std::log(std::max(chance, Chances::smallest));
    }
    const Vector off = p - mean_;
    return sum - 0.5 * off.cwiseAbs2().dot(precision_);
  }

  /// Slope of the log posterior and its expected curvature (Fisher information with the prior's precision).
  void evaluate(const Vector& p, Vector& slope, Matrix& curvature) const {
    const Lines l = lines_of(p);
    Vector by_line = Vector::Zero();
    Matrix information = Matrix::Zero();
    for (const GradedReading& reading : readings_) {
      add(Chances(l, reading.intensity), l.spread, static_cast<std::size_t>(reading.grade), by_line,
          information);
    }
    const Matrix j = slopes(l);
    slope = j.transpose() * by_line - precision_.cwiseProduct(p - mean_);
    curvature = j.transpose() * information.selfadjointView<Eigen::Upper>() * j;
    curvature.diagonal() += precision_;
  }

private:
  static void add(const Chances& at, double spread, std::size_t read, Vector& by_line, Matrix& information) {
    constexpr double least = 1e-14; // A grade so unlikely adds no information.
    std::array<double, grades> inverse{};
    std::array<double, grades> by_spread{}; // Derivative of each chance by the log spread.
    for (std::size_t g = 0; g < grades; ++g) {
      inverse[g] = 1 / std::max(at.chance[g], least);
      const double low = g == 0 ? 0 : at.z[g - 1] * at.density[g - 1];
      const double high = g == lines ? 0 : at.z[g] * at.density[g];
      by_spread[g] = low - high;
    }
    for (std::size_t k = 0; k < lines; ++k) {
      const auto row = static_cast<Eigen::Index>(k);
      const double f = at.density[k] / spread;
      information(row, row) += f * f * (inverse[k] + inverse[k + 1]);
      if (k + 1 < lines) {
        information(row, row + 1) -= f * at.density[k + 1] / spread * inverse[k + 1];
      }
      information(row, 5) += f * (by_spread[k] * inverse[k] - by_spread[k + 1] * inverse[k + 1]);
      by_line[row] += f * ((read == k ? 1 : 0) / at.chance[k] - (read == k + 1 ? 1 : 0) / at.chance[k + 1]);
    }
    for (std::size_t g = 0; g < grades; ++g) {
      information(5, 5) += by_spread[g] * by_spread[g] * inverse[g];
    }
    by_line[5] += by_spread[read] / at.chance[read];
  }

  std::span<const GradedReading> readings_;
  Vector mean_;
  Vector precision_;
};

Boundaries describe(const Vector& p, const Matrix& curvature, double log_posterior, int steps) {
  const Lines l = lines_of(p);
  const Matrix j = slopes(l);
  const Matrix covariance = j * curvature.ldlt().solve(j.transpose());
  Boundaries found;
  found.line = l.at;
  found.spread = l.spread;
  found.log_posterior = log_posterior;
  found.steps = steps;
  double shift_variance = 0;
  for (std::size_t k = 0; k < lines; ++k) {
    const auto row = static_cast<Eigen::Index>(k);
    found.shift += (l.at[k] - reference_lines[k]) / lines;
    found.line_se[k] = std::sqrt(covariance(row, row));
    for (Eigen::Index other = 0; other < static_cast<Eigen::Index>(lines); ++other) {
      shift_variance += covariance(row, other) / (lines * lines);
    }
  }
  found.shift_se = std::sqrt(shift_variance);
  return found;
}

} // namespace

std::optional<Boundaries> fit_boundaries(std::span<const GradedReading> readings,
                                         const BoundaryPrior& prior) {
  if (std::any_of(readings.begin(), readings.end(), [](const GradedReading& r) {
        return r.grade < 0 || r.grade >= static_cast<int>(grades);
      })) {
    throw std::out_of_range("a grade lies from 0 to 5");
  }
  constexpr int most_steps = 100;
  constexpr int most_halvings = 20;
  constexpr double settled = 1e-13; // Of what a step can still gain.
  const Fit fit(readings, prior);
  Vector p = fit.start();
  double here = fit.log_posterior(p);
  Vector slope;
  Matrix curvature;
  for (int step = 1; step <= most_steps; ++step) {
    fit.evaluate(p, slope, curvature);
    const Vector move = curvature.ldlt().solve(slope);
    if (!move.allFinite()) {
      return std::nullopt;
    }
    double length = 1;
    double there = fit.log_posterior(p + move);
    for (int halving = 0; halving < most_halvings && !(there >= here - 1e-12); ++halving) {
      length /= 2;
      there = fit.log_posterior(p + length * move);
    }
    if (!(there >= here - 1e-12) || slope.dot(move) < settled) {
      return describe(p, curvature, here, step);
    }
    p += length * move;
    here = there;
  }
  return std::nullopt;
}

double chance_of_shift(double shift, double se, double least) {
  return normal_below((shift - least) / se) + normal_below((-least - shift) / se);
}

bool may_speak_of_line(const Boundaries& fitted, std::size_t line, std::span<const GradedReading> readings) {
  constexpr double least_shift = 0.25; // Grades; a smaller one is no concern.
  constexpr double least_chance = 0.9; // Proposals of this program.
  constexpr double near = 0.75;
  constexpr std::ptrdiff_t least_near = 4;
  const double off = fitted.line[line] - reference_lines[line];
  const auto close =
      std::count_if(readings.begin(), readings.end(), [line, near](const GradedReading& reading) {
        return std::abs(reading.intensity - reference_lines[line]) <= near;
      });
  return close >= least_near && chance_of_shift(off, fitted.line_se[line], least_shift) > least_chance;
}

} // namespace matula::statistics
