#include "sim/instrument/correction.hpp"

#include "sim/matter/density.hpp"

#include <cmath>

namespace matula::instrument {

namespace {

constexpr double step = 0.001;
constexpr double divisions = 1000.0;

/// Relative density at calibration temperature of the liquid that reads `read` (free of zero error) at
/// `temperature_c`.
double at_calibration(const Physical& physical, double read, double temperature_c) {
  const double reference = matter::water_density_kg_m3(physical.calibration_c);
  const double warmed = 1 + physical.glass_expansion_per_k * (temperature_c - physical.calibration_c);
  const double density = read * reference / warmed;
  const double excess = density - matter::water_density_kg_m3(temperature_c);
  const double excess_at_calibration =
      excess * matter::excess_share(physical.calibration_c) / matter::excess_share(temperature_c);
  return 1 + excess_at_calibration / reference;
}

} // namespace

Corrections rule_correction(const WrittenRule& rule, const ToCorrect& reading) {
  Corrections c;
  c.zero = -reading.zero_error;
  c.temperature = step * (reading.temperature_c - rule.calibration_c) / rule.per_degrees_c;
  c.protein = -rule.protein_per_g_dl * reading.protein_g_dl;
  c.glucose = -rule.glucose_per_g_dl * reading.glucose_g_dl;
  return c;
}

Corrections physical_correction(const Physical& physical, double read, const ToCorrect& reading) {
  Corrections c;
  c.zero = -reading.zero_error;
  const double free_of_zero = read + c.zero;
  c.temperature = at_calibration(physical, free_of_zero, reading.temperature_c) - free_of_zero;
  c.protein = -increment_per_g_dl(physical.protein_volume_ml_per_g) * reading.protein_g_dl;
  c.glucose = -increment_per_g_dl(physical.glucose_volume_ml_per_g) * reading.glucose_g_dl;
  return c;
}

double increment_per_g_dl(double volume_ml_per_g) {
  constexpr double g_ml_per_g_dl = 0.01;
  constexpr double kg_m3_per_g_ml = 1000.0;
  const double water = matter::water_density_kg_m3(20.0) / kg_m3_per_g_ml;
  return g_ml_per_g_dl * (1 - volume_ml_per_g * water) / water;
}

double to_division(double relative_density) {
  // The small push keeps a written half (1.0225) a half in spite of binary fractions.
  return std::floor(relative_density * divisions + 0.5 + 1e-9) / divisions;
}

} // namespace matula::instrument
