#pragma once

#include "sim/optics/spectrum.hpp"

namespace matula::optics {

/// A band that is Gaussian in wavelength: `peak` at `centre_nm`, full width at half height `fwhm_nm` (> 0).
[[nodiscard]] Spectrum gaussian_band(double peak, double centre_nm, double fwhm_nm);

/// A band that is Gaussian in wavenumber, as d-d bands of metal ions are: full width at half height
/// `fwhm_per_cm` (> 0).
[[nodiscard]] Spectrum gaussian_band_per_cm(double peak, double centre_nm, double fwhm_per_cm);

/// The tail of brown and yellow pigments: `at_reference` exp(-slope (lambda - reference_nm)), slope in 1/nm.
[[nodiscard]] Spectrum exponential_tail(double at_reference, double reference_nm, double slope_per_nm);

/// Sum of two spectra, band by band.
[[nodiscard]] Spectrum sum(const Spectrum& one, const Spectrum& other);

/// Linear interpolation in ascending (wavelength_nm, value) pairs, held constant beyond the ends; at least
/// one pair.
template <class Pairs> [[nodiscard]] Spectrum interpolated(const Pairs& pairs) {
  Spectrum s{};
  for (std::size_t i = 0; i < band_count; ++i) {
    const double at = wavelength_nm(i);
    auto right = pairs.begin();
    while (right != pairs.end() && right->first < at) {
      ++right;
    }
    if (right == pairs.begin()) {
      s[i] = right->second;
      continue;
    }
    const auto left = right - 1;
    s[i] = right == pairs.end() ? left->second
                                : left->second + (right->second - left->second) * (at - left->first) /
                                                     (right->first - left->first);
  }
  return s;
}

} // namespace matula::optics
