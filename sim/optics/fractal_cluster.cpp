#include "sim/optics/fractal_cluster.hpp"

#include "sim/optics/anomalous_diffraction.hpp"
#include "sim/optics/mie.hpp"

#include <cmath>
#include <numbers>

namespace matula::optics {

namespace {

/// Angles are taken evenly in log(1 - cos): the forward lobe of a large cluster is narrow.
constexpr int angle_steps = 48;
constexpr double narrowest = 1e-9;
/// 1 - g of a cluster so crowded that light wanders inside it; fitted here.
constexpr double most_turned = 0.8;

struct Angular {
  double total =
      0; ///< Integral of the angular factor over the mean of all directions; 1 for an isotropic factor of 1.
  double cosine = 0; ///< Its mean cosine.
};

/// Angular factor: Henyey-Greenstein primary times the structure factor (1 + 2/(3 D) (q Rg)^2)^(-D/2).
Angular integrate(double k_rg, double dimension, double primary_g) {
  const double low = std::log(narrowest);
  const double step = (std::log(2.0) - low) / angle_steps;
  Angular sum;
  double alone = 0; // The primary's own integral, 1 but for the width of the steps.
  for (int i = 0; i < angle_steps; ++i) {
    const double u = std::exp(low + (i + 0.5) * step); // 1 - cos
    const double qrg2 = 2 * u * k_rg * k_rg;           // q = 2 k sin(theta / 2), so q^2 = 2 k^2 (1 - cos).
    const double structure = std::pow(1 + 2.0 / (3.0 * dimension) * qrg2, -dimension / 2);
    const double spread = 1 + primary_g * primary_g - 2 * primary_g * (1 - u);
    const double primary = (1 - primary_g * primary_g) / (spread * std::sqrt(spread));
    const double part = 0.5 * structure * primary * u * step;
    alone += 0.5 * primary * u * step;
    sum.total += part;
    sum.cosine += part * (1 - u);
  }
  sum.cosine /= sum.total;
  sum.total /= alone;
  return sum;
}

/// The smaller of two, with a rounded corner so that nothing jumps when a cluster grows.
double soft_smaller(double one, double other) {
  return one / std::pow(1 + std::pow(one / other, 6), 1.0 / 6);
}

} // namespace

ClusterScatter cluster_scatter(const Cluster& cluster, double medium_wavelength_m, std::complex<double> m) {
  const double pi = std::numbers::pi;
  const double k = 2 * pi / medium_wavelength_m;
  const double a = cluster.primary_radius_m;
  const MieEfficiency primary = mie(k * a, m);
  const double primary_area = pi * a * a;
  const double n = cluster.primaries;
  const double d = cluster.dimension;
  // One sphere alone has no structure between spheres.
  const double k_rg = n <= 1 ? 0 : k * cluster.radius_m * std::sqrt(d / (d + 2));
  const Angular angular = integrate(k_rg, d, primary.asymmetry);
  const double rdg = n * n * primary.scattering * primary_area * angular.total;

  const double area = pi * cluster.radius_m * cluster.radius_m;
  const double filled = std::fmin(1.0, n * std::pow(a / cluster.radius_m, 3));
  const double rho = 2 * k * cluster.radius_m * filled * std::abs(m - 1.0);
  // Past its first maximum a ragged cluster shows none of the sphere's ripples.
  const double cap =
      area * (rho < 4.086 ? std::fmax(anomalous_extinction(rho), 1e-30) : 2 + 1.173 * 4.086 / rho);
  ClusterScatter c;
  c.scatter_m2 = soft_smaller(rdg, cap);
  c.absorb_m2 = area * -std::expm1(-n * (primary.extinction - primary.scattering) * primary_area / area);
  // The cap takes light from the narrow forward lobe; what the inner structure turns aside stays turned.
  const double turned = soft_smaller(rdg * (1 - angular.cosine), most_turned * c.scatter_m2);
  c.asymmetry = 1 - turned / c.scatter_m2;
  return c;
}

} // namespace matula::optics
