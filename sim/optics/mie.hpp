#pragma once

#include <complex>

namespace matula::optics {

/// Efficiencies of one sphere, relative to its geometric cross-section.
struct MieEfficiency {
  double extinction = 0;
  double scattering = 0;
  double backscatter = 0; ///< Radar convention, as in Bohren and Huffman.
  double asymmetry = 0;   ///< Mean cosine of the scattering angle.
};

/// Homogeneous sphere of size parameter `x` (> 0, 2 pi radius over the wavelength in the medium) and relative
/// index `m` = n + ik (k >= 0 absorbs). Bohren and Huffman 1983, ch. 4, with a downward logarithmic
/// derivative.
[[nodiscard]] MieEfficiency mie(double x, std::complex<double> m);

/// Scattering of spheres spread lognormally around a size, per unit volume of solid.
struct SphereScatter {
  double scatter_per_m = 0; ///< mu_s for a volume fraction of 1.
  double absorb_per_m = 0;  ///< mu_a for a volume fraction of 1.
  double asymmetry = 0;     ///< Weighted by scattering.
};

/// Spheres of one substance at one wavelength `medium_wavelength_m` (in the liquid), of any size. Above a
/// size parameter of about 60 the large sphere limit is used (absorption by anomalous diffraction, van de
/// Hulst 1957).
class Spheres {
public:
  Spheres(double medium_wavelength_m, std::complex<double> m);

  /// Spheres whose mean volume is that of `radius_m` and whose radii spread lognormally with geometric
  /// standard deviation `spread` (>= 1).
  [[nodiscard]] SphereScatter around(double radius_m, double spread) const;

private:
  [[nodiscard]] MieEfficiency one(double x) const;

  double wavelength_m_;
  std::complex<double> m_;
  MieEfficiency large_;
};

} // namespace matula::optics
