#pragma once

#include <cmath>
#include <numbers>

namespace matula::statistics {

/// The standard normal distribution at a place.
struct NormalAt {
  double density = 0;
  double tail = 0; ///< P(Z > |z|): never more than a half, and exact however small.
};

/// Density and tail from one exponential: the ratio of the two as a quotient of polynomials, far out as a
/// continued fraction. J.F. Hart et al., Computer Approximations, 1968, no. 5666, as given by G. West,
/// Wilmott Magazine, May 2005, 70. To 14 digits of the tail (tests/published/statistics_small.cpp).
[[nodiscard]] inline NormalAt normal_at(double z) {
  const double x = std::abs(z);
  const double bell = std::exp(-0.5 * x * x);
  const double density = bell * (std::numbers::inv_sqrtpi / std::numbers::sqrt2);
  constexpr double far = 7.07106781186547;
  if (x < far) {
    double over = 3.52624965998911e-02 * x + 0.700383064443688;
    over = over * x + 6.37396220353165;
    over = over * x + 33.912866078383;
    over = over * x + 112.079291497871;
    over = over * x + 221.213596169931;
    over = over * x + 220.206867912376;
    double under = 8.83883476483184e-02 * x + 1.75566716318264;
    under = under * x + 16.064177579207;
    under = under * x + 86.7807322029461;
    under = under * x + 296.564248779674;
    under = under * x + 637.333633378831;
    under = under * x + 793.826512519948;
    under = under * x + 440.413735824752;
    return {density, bell * over / under};
  }
  return {density, density / (x + 1 / (x + 2 / (x + 3 / (x + 4 / (x + 0.65)))))};
}

/// P(Z <= z); exact in the lower tail.
[[nodiscard]] inline double normal_below(double z) {
  return 0.5 * std::erfc(-z / std::numbers::sqrt2);
}

} // namespace matula::statistics
