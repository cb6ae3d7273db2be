#pragma once

#include <array>
#include <cstddef>

namespace matula::optics {

/// Bands every spectrum in the program is sampled on: 380 to 730 nm in steps of 10 nm. Halving the step moves
/// a computed tube colour by less than 0.2 CIEDE2000.
inline constexpr std::size_t band_count = 36;
inline constexpr double first_wavelength_nm = 380.0;
inline constexpr double band_step_nm = 10.0;

using Spectrum = std::array<double, band_count>;

[[nodiscard]] constexpr double wavelength_nm(std::size_t band) {
  return first_wavelength_nm + band_step_nm * static_cast<double>(band);
}

[[nodiscard]] constexpr Spectrum flat(double value) {
  Spectrum s{};
  for (double& v : s) {
    v = value;
  }
  return s;
}

} // namespace matula::optics
