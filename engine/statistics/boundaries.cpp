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
  Chances(const Lines& l, double x) {
    for (std::size_t k = 0; k < lines; ++k) {
      z[k] = (l.at[k] - x) / l.spread;
      const NormalAt at = normal_at(z[k]);
      density[k] = at.density;
      tail[k] = at.tail;
    }
    chance[0] = std::max(z[0] < 0 ? tail[0] : 1 - tail[0], smallest);
    chance[lines] = std::max(z[lines - 1] > 0 ? tail[lines - 1] : 1 - tail[lines - 1], smallest);
    for (std::size_t g = 1; g < lines; ++g) {
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

/// Slope of the log posterior, its expected curvature (Fisher information with the prior's precision), and
/// its value.
struct Place {
  double log_posterior = 0;
  Vector slope;
  Matrix curvature;
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

  [[nodiscard]] Place evaluate(const Vector& p) const {
    const Lines l = lines_of(p);
    Sums sums;
    for (const GradedReading& reading : readings_) {
      add(Chances(l, reading.intensity), static_cast<std::size_t>(reading.grade), sums);
    }
    const Matrix j = slopes(l);
    const Vector off = p - mean_;
    Vector by_line;
    Matrix information = Matrix::Zero();
    for (std::size_t k = 0; k < lines; ++k) {
      const auto row = static_cast<Eigen::Index>(k);
      by_line[row] = sums.by_line[k] / l.spread;
      information(row, row) = sums.own[k] / (l.spread * l.spread);
      information(row, 5) = information(5, row) = sums.with_spread[k] / l.spread;
      if (k > 0) {
        information(row, row - 1) = information(row - 1, row) = sums.with_last[k] / (l.spread * l.spread);
      }
    }
    by_line[5] = sums.by_spread;
    information(5, 5) = sums.own_spread;
    Place place;
    place.log_posterior = sums.log_chance - 0.5 * off.cwiseAbs2().dot(precision_);
    place.slope = j.transpose() * by_line - precision_.cwiseProduct(off);
    place.curvature = j.transpose() * information * j;
    place.curvature.diagonal() += precision_;
    return place;
  }

private:
  /// What all readings add up to, the lines measured in spreads.
  struct Sums {
    double log_chance = 0;
    std::array<double, lines> by_line{};
    double by_spread = 0;
    std::array<double, lines> own{};
    std::array<double, lines> with_last{}; ///< Of a line and the one below it.
    std::array<double, lines> with_spread{};
    double own_spread = 0;
  };

  static void add(const Chances& at, std::size_t read, Sums& sums) {
    constexpr double least = 1e-14; // A grade so unlikely adds no information.
    std::array<double, grades> inverse{};
    std::array<double, grades> by_spread{}; // Derivative of each chance by the log spread,
    std::array<double, grades> relative{};  // and over the chance.
    double below = 0;
    for (std::size_t g = 0; g < grades; ++g) {
      inverse[g] = 1 / std::max(at.chance[g], least);
      const double above = g == lines ? 0 : at.z[g] * at.density[g];
      by_spread[g] = below - above;
      relative[g] = by_spread[g] * inverse[g];
      sums.own_spread += by_spread[g] * relative[g];
      below = above;
    }
    for (std::size_t k = 0; k < lines; ++k) {
      const double f = at.density[k];
      sums.own[k] += f * f * (inverse[k] + inverse[k + 1]);
      sums.with_spread[k] += f * (relative[k] - relative[k + 1]);
      sums.with_last[k] -= k > 0 ? f * at.density[k - 1] * inverse[k] : 0;
    }
    const double chance = at.chance[read];
    sums.log_chance += std::log(chance);
    sums.by_spread += by_spread[read] / chance;
    if (read < lines) {
      sums.by_line[read] += at.density[read] / chance;
    }
    if (read > 0) {
      sums.by_line[read - 1] -= at.density[read - 1] / chance;
    }
  }

  std::span<const GradedReading> readings_;
  Vector mean_;
  Vector precision_;
};

Boundaries describe(const Vector& p, const Place& place, int steps) {
  const Lines l = lines_of(p);
  const Matrix j = slopes(l);
  const Matrix covariance = j * place.curvature.ldlt().solve(j.transpose());
  Boundaries found;
  found.line = l.at;
  found.spread = l.spread;
  found.log_posterior = place.log_posterior;
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
  constexpr double settled = 1e-13;  // Of what a step can still gain.
  constexpr double rounding = 1e-12; // Of a sum of logarithms.
  const Fit fit(readings, prior);
  Vector p = fit.start();
  Place here = fit.evaluate(p);
  for (int step = 1; step <= most_steps; ++step) {
    Vector move = here.curvature.ldlt().solve(here.slope);
    if (!move.allFinite()) {
      return std::nullopt;
    }
    if (here.slope.dot(move) < settled) {
      return describe(p, here, step);
    }
    Place there = fit.evaluate(p + move);
    for (int halving = 0; halving < most_halvings && !(there.log_posterior >= here.log_posterior - rounding);
         ++halving) {
      move /= 2;
      there = fit.evaluate(p + move);
    }
    if (!(there.log_posterior >= here.log_posterior - rounding)) {
      return describe(p, here, step);
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
