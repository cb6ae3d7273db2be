#include "sim/instrument/buoyancy.hpp"

#include "sim/optics/nature.hpp"

#include "sim/matter/density.hpp"

#include <algorithm>

namespace matula::instrument {

namespace {

constexpr double pi = 3.14159265358979323846;
constexpr double mm3_per_ml = 1000.0;
constexpr double g_per_ml_per_kg_m3 = 1e-3;
/// mN/m times mm is 1e-6 N; over gravity that is kg, here g.
constexpr double g_per_mn_m_mm = 1e-6 / nature::gravity_m_s2 * 1e3;

double water_g_per_ml(double temperature_c) {
  return matter::water_density_kg_m3(temperature_c) * g_per_ml_per_kg_m3;
}

/// Weight and surface pull in distilled water at calibration, for which the maker placed the 1.000 mark, g.
double calibrated_load_g(const Urinometer& urinometer) {
  return urinometer.bulb_volume_ml * water_g_per_ml(urinometer.calibration_c);
}

double load_g(const Urinometer& urinometer, const Bath& bath) {
  const double tension_change =
      bath.surface_tension_mn_m - matter::water_surface_tension_mn_m(urinometer.calibration_c);
  return calibrated_load_g(urinometer) + pi * urinometer.stem_diameter_mm * tension_change * g_per_mn_m_mm;
}

double jar_area_mm2(const Bath& bath) {
  return pi / 4 * bath.inner_diameter_mm * bath.inner_diameter_mm;
}

} // namespace

double stem_area_mm2(const Urinometer& urinometer) {
  return urinometer.bulb_volume_ml * (1 - 1 / urinometer.scale_end) * mm3_per_ml / urinometer.scale_length_mm;
}

double immersed_ml(const Urinometer& urinometer, double surface_mm) {
  return urinometer.bulb_volume_ml - stem_area_mm2(urinometer) * surface_mm / mm3_per_ml;
}

double printed_reading(const Urinometer& urinometer, double mm) {
  const double beyond_mm = 0.1 * urinometer.scale_length_mm;
  const double at = std::clamp(mm, -beyond_mm, urinometer.scale_length_mm + beyond_mm);
  return urinometer.bulb_volume_ml / immersed_ml(urinometer, at) + urinometer.zero_error;
}

double rest_mm(const Urinometer& urinometer, const Bath& bath, double bubble_ml) {
  const double density = bath.density_kg_m3 * g_per_ml_per_kg_m3;
  const double warmed =
      1 + urinometer.glass_expansion_per_k * (bath.temperature_c - urinometer.calibration_c);
  const double immersed_cold_ml = (load_g(urinometer, bath) / density - bubble_ml) / warmed;
  return (urinometer.bulb_volume_ml - immersed_cold_ml) * mm3_per_ml / stem_area_mm2(urinometer);
}

double grounded_mm(const Urinometer& urinometer, const Bath& bath) {
  const double jar = jar_area_mm2(bath);
  const double stem = stem_area_mm2(urinometer);
  const double bulb_mm3 = immersed_ml(urinometer, urinometer.scale_length_mm) * mm3_per_ml;
  const double liquid_mm3 = bath.volume_ml * mm3_per_ml;
  double level = (liquid_mm3 + bulb_mm3 - stem * urinometer.bulb_length_mm) / (jar - stem);
  if (level < urinometer.bulb_length_mm) {
    level = liquid_mm3 / (jar - bulb_mm3 / urinometer.bulb_length_mm);
  }
  return urinometer.bulb_length_mm + urinometer.scale_length_mm - level;
}

} // namespace matula::instrument
