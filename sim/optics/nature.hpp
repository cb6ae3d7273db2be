#pragma once

namespace matula {

/// Constants of nature and of the scales of measurement, in the units they name. In this room because every
/// other one may use it.
namespace nature {

inline constexpr double zero_c_in_kelvin = 273.15;
inline constexpr double gas_constant_j_per_mol_k = 8.314462618; ///< CODATA 2018.
inline constexpr double gas_constant_kj_per_mol_k = gas_constant_j_per_mol_k * 1e-3;
inline constexpr double gravity_m_s2 = 9.80665; ///< Standard gravity.
inline constexpr double water_g_per_mol = 18.015;
inline constexpr double ln10 = 2.302585092994046;

} // namespace nature

} // namespace matula
