#include "sim/appearance/surface.hpp"

#include "sim/matter/density.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace matula::appearance {

namespace {

/// Of water on bench glass, clean but not flamed; 10 to 30 degrees is common.
constexpr double contact_angle_deg = 20;

/// Vapour pressure of water, kPa: Magnus form of Sonntag 1990.
double vapour_kpa(double temperature_c) {
  return 0.6112 * std::exp(17.62 * temperature_c / (243.12 + temperature_c));
}

} // namespace

double meniscus_rise_mm(double inner_radius_mm, double temperature_c) {
  constexpr double density_kg_m3 = 1000;
  constexpr double gravity = 9.81;
  const double angle = contact_angle_deg * std::numbers::pi / 180;
  const double capillary_mm =
      1e3 * std::sqrt(matter::water_surface_tension_mn_m(temperature_c) * 1e-3 / (density_kg_m3 * gravity));
  const double at_plate = capillary_mm * std::sqrt(2 * (1 - std::sin(angle)));
  const double in_capillary = inner_radius_mm * (1 - std::sin(angle)) / std::cos(angle);
  return at_plate * in_capillary / std::hypot(at_plate, in_capillary);
}

double steam_over(double temperature_c) {
  constexpr double atmosphere_kpa = 101.325;
  constexpr double warmest_without_mist_c = 45; // Below it the excess is lost in the room's air; fitted here.
  const double excess = vapour_kpa(temperature_c) - vapour_kpa(warmest_without_mist_c);
  return std::clamp(excess / atmosphere_kpa, 0.0, 1.0);
}

} // namespace matula::appearance
