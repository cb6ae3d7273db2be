#pragma once

#include <complex>

namespace matula::optics {

/// A cluster of equal small spheres.
struct Cluster {
  double primary_radius_m = 1e-7;
  double primaries = 1;   ///< Number of primary spheres, >= 1.
  double radius_m = 1e-7; ///< Outer radius of the cluster.
  double dimension = 2.3; ///< Fractal dimension.
};

/// Cross-sections of one cluster.
struct ClusterScatter {
  double scatter_m2 = 0;
  double absorb_m2 = 0;
  double asymmetry = 0;
};

/// Rayleigh-Debye-Gans scattering by a fractal cluster with the Fisher-Burford structure factor (Sorensen
/// 2001, Aerosol Sci. Technol. 35, 648), capped by what a uniform soft sphere of the same outer size and mean
/// index can take out of the beam (anomalous diffraction). `m` is the primary's index relative to the liquid.
[[nodiscard]] ClusterScatter cluster_scatter(const Cluster& cluster, double medium_wavelength_m,
                                             std::complex<double> m);

} // namespace matula::optics
