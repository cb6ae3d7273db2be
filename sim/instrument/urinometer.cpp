#include "sim/instrument/urinometer.hpp"

#include "sim/instrument/buoyancy.hpp"

#include <algorithm>
#include <cmath>

namespace matula::instrument {

namespace {

constexpr double pi = 3.14159265358979323846;
constexpr double mm3_per_ml = 1000.0;
constexpr double gravity_mm_s2 = 9806.65;
constexpr double g_per_mm3_per_kg_m3 = 1e-6;

double between(double low, double high, double share) {
  return low + share * (high - low);
}

/// Reading change for a mm along the stem near `mm`.
double reading_per_mm(const Urinometer& urinometer, double mm) {
  return stem_area_mm2(urinometer) / mm3_per_ml * urinometer.bulb_volume_ml /
         std::pow(immersed_ml(urinometer, mm), 2.0);
}

double surface_mm(const Urinometer& urinometer, const Float& state, const Bath& bath) {
  const double rest = rest_mm(urinometer, bath, state.bubble_volume_ml);
  const double stands = grounded_mm(urinometer, bath);
  if (stands > rest) {
    return stands;
  }
  return std::max(stands, rest + state.wall_shift_mm + state.depth_offset_mm);
}

/// Height to which a liquid climbs a thin wetted rod: D.F. James, J. Fluid Mech. 63 (1974) 657, contact angle
/// 0.
double climb_mm(double radius_mm, const Bath& bath) {
  constexpr double euler = 0.5772156649015329;
  constexpr double mm_per_m = 1e3;
  const double capillary_mm =
      mm_per_m * std::sqrt(bath.surface_tension_mn_m * 1e-3 / (bath.density_kg_m3 * gravity_mm_s2 * 1e-3));
  return std::max(0.0, radius_mm * (std::log(4 * capillary_mm / radius_mm) - euler));
}

} // namespace

Float lower(const Urinometer& urinometer, const Bath& bath, bool wiped, bool spun, const Chance& chance) {
  const FloatHabits& habits = urinometer.habits;
  Float state;
  state.depth_offset_mm = habits.lowered_above_mm;
  const double rest = rest_mm(urinometer, bath, 0);
  if (!wiped) {
    const double shift = between(habits.bubble_shift_low, habits.bubble_shift_high, chance.bubble_size);
    state.bubble_volume_ml = shift * immersed_ml(urinometer, rest);
  }
  if (spun) {
    state.spin_per_s = habits.spin_per_s;
  } else {
    state.touches_wall = true;
    state.lean_mm = std::max(0.0, (bath.inner_diameter_mm - urinometer.bulb_diameter_mm) / 2);
    const double shift = between(habits.wall_shift_low, habits.wall_shift_high, chance.wall_size);
    state.wall_shift_mm = (chance.wall_side < 0.5 ? -1 : 1) * shift / reading_per_mm(urinometer, rest);
  }
  state.grounded = grounded_mm(urinometer, bath) > rest_mm(urinometer, bath, state.bubble_volume_ml);
  return state;
}

void spin(Float& state, const Urinometer& urinometer) {
  state.touches_wall = false;
  state.lean_mm = 0;
  state.depth_offset_mm += state.wall_shift_mm;
  state.wall_shift_mm = 0;
  state.spin_per_s = urinometer.habits.spin_per_s;
}

void advance(Float& state, const Urinometer& urinometer, const Bath& bath, double seconds) {
  const FloatHabits& habits = urinometer.habits;
  state.grounded = grounded_mm(urinometer, bath) > rest_mm(urinometer, bath, state.bubble_volume_ml);
  state.spin_per_s *= std::exp(-seconds / habits.spin_seconds);
  const double moved_g = urinometer.mass_g * (1 + habits.added_mass_share);
  const double omega = std::sqrt(bath.density_kg_m3 * g_per_mm3_per_kg_m3 * gravity_mm_s2 *
                                 stem_area_mm2(urinometer) / moved_g);
  const double decay = habits.damping * omega;
  const double swing = omega * std::sqrt(1 - habits.damping * habits.damping);
  const double x = state.depth_offset_mm;
  const double b = (state.speed_mm_s + decay * x) / swing;
  const double fall = std::exp(-decay * seconds);
  const double c = std::cos(swing * seconds);
  const double s = std::sin(swing * seconds);
  state.depth_offset_mm = fall * (x * c + b * s);
  state.speed_mm_s = fall * ((b * swing - decay * x) * c - (x * swing + decay * b) * s);
}

ScaleView read_scale(const Urinometer& urinometer, const Float& state, const Bath& bath) {
  const double at_mm = surface_mm(urinometer, state, bath);
  ScaleView view;
  view.reading_at_surface = printed_reading(urinometer, at_mm);
  view.reading_at_meniscus_top =
      printed_reading(urinometer, at_mm - climb_mm(urinometer.stem_diameter_mm / 2, bath));
  // A raised eye sees the near edge of the surface against a lower point of the stem.
  const double edge_mm = bath.inner_diameter_mm / 2;
  const double lower_mm_per_mm = edge_mm / (urinometer.habits.reading_distance_mm - edge_mm);
  view.parallax_per_mm = lower_mm_per_mm * reading_per_mm(urinometer, at_mm);
  view.surface_tension_mn_m = bath.surface_tension_mn_m;
  return view;
}

double needed_volume_ml(const Urinometer& urinometer, const Bath& bath) {
  const double rest = rest_mm(urinometer, bath, 0);
  const double depth_mm = urinometer.bulb_length_mm + urinometer.scale_length_mm - rest;
  const double jar_mm2 = pi / 4 * bath.inner_diameter_mm * bath.inner_diameter_mm;
  return depth_mm * jar_mm2 / mm3_per_ml - immersed_ml(urinometer, rest);
}

double level_with_float_mm(const Urinometer& urinometer, const Float& state, const Bath& bath) {
  const double at_mm = surface_mm(urinometer, state, bath);
  const double jar_mm2 = pi / 4 * bath.inner_diameter_mm * bath.inner_diameter_mm;
  if (grounded_mm(urinometer, bath) >= at_mm) {
    return urinometer.bulb_length_mm + urinometer.scale_length_mm - at_mm;
  }
  return (bath.volume_ml + immersed_ml(urinometer, at_mm)) * mm3_per_ml / jar_mm2;
}

} // namespace matula::instrument
