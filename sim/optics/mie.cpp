#include "sim/optics/mie.hpp"

#include "sim/optics/anomalous_diffraction.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <vector>

namespace matula::optics {

namespace {

using Complex = std::complex<double>;

std::size_t term_count(double x) {
  return static_cast<std::size_t>(x + 4.05 * std::cbrt(x) + 2.0) + 1; // Wiscombe 1980.
}

/// D_n(mx) for n = 0..count, by downward recurrence from far above the order where it has converged.
std::vector<Complex> log_derivative(Complex mx, std::size_t count) {
  const auto start = std::max(count, static_cast<std::size_t>(std::abs(mx))) + 16;
  std::vector<Complex> d(count + 1);
  Complex next = 0;
  const Complex inverse = 1.0 / mx;
  for (std::size_t n = start; n > 0; --n) {
    const Complex ratio = static_cast<double>(n) * inverse;
    next = ratio - 1.0 / (next + ratio);
    if (n - 1 <= count) {
      d[n - 1] = next;
    }
  }
  return d;
}

} // namespace

MieEfficiency mie(double x, Complex m) {
  const std::size_t terms = term_count(x);
  const std::vector<Complex> d = log_derivative(m * x, terms);
  double psi_before = std::cos(x);
  double psi = std::sin(x);
  double chi_before = -std::sin(x);
  double chi = std::cos(x);
  Complex xi(psi, -chi);
  Complex a_before = 0;
  Complex b_before = 0;
  Complex back = 0;
  MieEfficiency q;
  for (std::size_t i = 1; i <= terms; ++i) {
    const auto n = static_cast<double>(i);
    const double psi_n = (2 * n - 1) * psi / x - psi_before;
    const double chi_n = (2 * n - 1) * chi / x - chi_before;
    const Complex xi_n(psi_n, -chi_n);
    const Complex ta = d[i] / m + n / x;
    const Complex tb = d[i] * m + n / x;
    const Complex a = (ta * psi_n - psi) / (ta * xi_n - xi);
    const Complex b = (tb * psi_n - psi) / (tb * xi_n - xi);
    q.extinction += (2 * n + 1) * (a + b).real();
    q.scattering += (2 * n + 1) * (std::norm(a) + std::norm(b));
    back += (i % 2 == 0 ? 1.0 : -1.0) * (2 * n + 1) * (a - b);
    q.asymmetry += (2 * n + 1) / (n * (n + 1)) * (a * std::conj(b)).real();
    q.asymmetry += (n - 1) * (n + 1) / n * (a_before * std::conj(a) + b_before * std::conj(b)).real();
    psi_before = psi;
    psi = psi_n;
    chi_before = chi;
    chi = chi_n;
    xi = xi_n;
    a_before = a;
    b_before = b;
  }
  q.extinction *= 2 / (x * x);
  q.asymmetry *= 4 / (x * x);
  q.scattering *= 2 / (x * x);
  q.asymmetry /= q.scattering;
  q.backscatter = std::norm(back) / (x * x);
  return q;
}

namespace {
constexpr double largest_mie_size = 60;
}

Spheres::Spheres(double medium_wavelength_m, Complex m)
    : wavelength_m_(medium_wavelength_m), m_(m), large_(mie(largest_mie_size, m)) {}

MieEfficiency Spheres::one(double x) const {
  if (x <= largest_mie_size) {
    return mie(x, m_);
  }
  MieEfficiency q = large_;
  // Anomalous diffraction leaves out that a dense sphere gathers light: join it to Mie theory at the edge.
  const double at_edge = large_.extinction - large_.scattering;
  const double gathered = at_edge / std::max(anomalous_absorption(largest_mie_size, m_), 1e-12);
  const double absorbed = std::clamp(gathered * anomalous_absorption(x, m_), 0.0, std::max(at_edge, 1.0));
  q.scattering = std::max(q.extinction - absorbed, 1e-6);
  q.extinction = q.scattering + absorbed;
  return q;
}

SphereScatter Spheres::around(double radius_m, double spread) const {
  // Seven-point Gauss-Hermite rule (weight exp(-z^2)); Abramowitz and Stegun 1964, table 25.10.
  constexpr std::array<double, 7> node{-2.651961356835233, -1.673551628767471, -0.816287882858965, 0.0,
                                       0.816287882858965,  1.673551628767471,  2.651961356835233};
  constexpr std::array<double, 7> weight{0.0009717812450995, 0.05451558281913, 0.4256072526101,
                                         0.8102646175568,    0.4256072526101,  0.05451558281913,
                                         0.0009717812450995};
  const double s = std::log(spread);
  const double median = radius_m * std::exp(-1.5 * s * s); // Mean volume stays that of radius_m.
  double volume = 0;
  double scatter = 0;
  double absorb = 0;
  double forward = 0;
  for (std::size_t i = 0; i < node.size(); ++i) {
    const double r = median * std::exp(std::numbers::sqrt2 * s * node[i]);
    const MieEfficiency q = one(2 * std::numbers::pi * r / wavelength_m_);
    const double area = weight[i] * std::numbers::pi * r * r;
    volume += weight[i] * 4.0 / 3.0 * std::numbers::pi * r * r * r;
    scatter += area * q.scattering;
    absorb += area * std::max(q.extinction - q.scattering, 0.0);
    forward += area * q.scattering * q.asymmetry;
  }
  return {scatter / volume, absorb / volume, forward / scatter};
}

} // namespace matula::optics
