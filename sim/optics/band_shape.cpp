#include "sim/optics/band_shape.hpp"

#include <cmath>
#include <numbers>

namespace matula::optics {

namespace {

double gaussian(double distance, double fwhm) {
  const double z = distance / fwhm;
  return std::exp(-4 * std::numbers::ln2 * z * z);
}

constexpr double nm_per_cm = 1e7;

} // namespace

Spectrum gaussian_band(double peak, double centre_nm, double fwhm_nm) {
  Spectrum s{};
  for (std::size_t i = 0; i < band_count; ++i) {
    s[i] = peak * gaussian(wavelength_nm(i) - centre_nm, fwhm_nm);
  }
  return s;
}

Spectrum gaussian_band_per_cm(double peak, double centre_nm, double fwhm_per_cm) {
  Spectrum s{};
  for (std::size_t i = 0; i < band_count; ++i) {
    s[i] = peak * gaussian(nm_per_cm / wavelength_nm(i) - nm_per_cm / centre_nm, fwhm_per_cm);
  }
  return s;
}

Spectrum exponential_tail(double at_reference, double reference_nm, double slope_per_nm) {
  Spectrum s{};
  for (std::size_t i = 0; i < band_count; ++i) {
    s[i] = at_reference * std::exp(-slope_per_nm * (wavelength_nm(i) - reference_nm));
  }
  return s;
}

Spectrum sum(const Spectrum& one, const Spectrum& other) {
  Spectrum s{};
  for (std::size_t i = 0; i < band_count; ++i) {
    s[i] = one[i] + other[i];
  }
  return s;
}

} // namespace matula::optics
