#include "engine/assets/readers.hpp"

#include "sim/instrument/buoyancy.hpp"
#include "sim/matter/density.hpp"

#include <cmath>

namespace matula::assets {

namespace {

constexpr double pi = 3.14159265358979323846;

instrument::FloatHabits read_habits(const strict::Table& table) {
  instrument::FloatHabits habits;
  habits.reading_distance_mm = table.number("reading_distance_mm", {100, 1000, "mm"});
  habits.lowered_above_mm = table.number("lowered_above_mm", {0, 30, "mm"});
  habits.damping = table.number("damping", {0.01, 0.9, ""});
  habits.added_mass_share = table.number("added_mass_share", {0, 2, ""});
  habits.spin_per_s = table.number("spin_per_s", {0.1, 10, "turns/s"});
  habits.spin_seconds = table.number("spin_seconds", {0.1, 60, "s"});
  habits.wall_shift_low = table.number("wall_shift_low", {0, 0.02, ""});
  habits.wall_shift_high = table.number("wall_shift_high", {habits.wall_shift_low, 0.02, ""});
  habits.bubble_shift_low = table.number("bubble_shift_low", {0, 0.02, ""});
  habits.bubble_shift_high = table.number("bubble_shift_high", {habits.bubble_shift_low, 0.02, ""});
  (void)table.text("source");
  return habits;
}

/// Mass, volume, stem and scale are tied by Archimedes: the row must agree with itself.
void check_float(const strict::Table& row, const instrument::Urinometer& u) {
  const double stem_mm2 = pi / 4 * u.stem_diameter_mm * u.stem_diameter_mm;
  const double scale_mm = u.scale_length_mm * instrument::stem_area_mm2(u) / stem_mm2;
  if (std::abs(scale_mm - u.scale_length_mm) > 0.01 * scale_mm) {
    row.complain("scale_length_mm",
                 std::to_string(scale_mm) + " mm, which bulb_volume_ml and stem_diameter_mm give");
  }
  const double pull_g =
      pi * u.stem_diameter_mm * matter::water_surface_tension_mn_m(u.calibration_c) * 1e-3 / 9.80665;
  const double mass_g = u.bulb_volume_ml * matter::water_density_kg_m3(u.calibration_c) * 1e-3 - pull_g;
  if (std::abs(mass_g - u.mass_g) > 0.005 * mass_g) {
    row.complain("mass_g", std::to_string(mass_g) + " g, with which it floats at 1.000 in water");
  }
}

instrument::Urinometer read_urinometer(const strict::Table& row) {
  const strict::Range length{1, 200, "mm"};
  instrument::Urinometer u;
  u.mass_g = row.number("mass_g", {1, 100, "g"});
  u.bulb_volume_ml = row.number("bulb_volume_ml", {1, 100, "mL"});
  u.bulb_diameter_mm = row.number("bulb_diameter_mm", length);
  u.bulb_length_mm = row.number("bulb_length_mm", length);
  u.stem_diameter_mm = row.number("stem_diameter_mm", {1, 20, "mm"});
  u.scale_length_mm = row.number("scale_length_mm", length);
  u.scale_end = row.number("scale_end", {1.01, 1.2, ""});
  u.calibration_c = row.number("calibration_c", {4, 25, "degrees C"});
  u.glass_expansion_per_k = row.number("glass_expansion_per_k", {1e-6, 1e-4, "1/K"});
  (void)row.text("source");
  check_float(row, u);
  return u;
}

void read_heat(const strict::Table& burner, const strict::Table& bath, bench::Tools& tools) {
  tools.flame_w = burner.number("flame_w", {5, 300, "W"});
  tools.flame_height_mm = burner.number("flame_height_mm", {5, 60, "mm"});
  tools.flame_reach_ml = burner.number("least_ml", {0.05, 5, "mL"});
  tools.bump_boiling = burner.number("bump_boiling", {0, 1, ""});
  tools.bumps_per_s = burner.number("bumps_per_s", {0, 5, "1/s"});
  tools.bumps_per_s_moving = burner.number("bumps_per_s_moving", {0, 5, "1/s"});
  tools.bump_low_ml = burner.number("bump_low_ml", {0, 10, "mL"});
  tools.bump_high_ml = burner.number("bump_high_ml", {tools.bump_low_ml, 10, "mL"});
  (void)burner.text("source");
  tools.bath_warming_c_per_s = bath.number("warming_c_per_s", {0.01, 5, "degrees C/s"});
  tools.bath_cooling_share_per_s = bath.number("cooling_share_per_s", {1e-6, 0.1, "1/s"});
  (void)bath.text("source");
}

void read_hands(const strict::Table& hands, const strict::Table& thermometer, bench::Tools& tools) {
  tools.swirl_shear_per_s = hands.number("swirl_shear_per_s", {1, 1000, "1/s"});
  tools.invert_shear_per_s = hands.number("invert_shear_per_s", {1, 1000, "1/s"});
  tools.water_bottle_ml = hands.number("water_ml", {1, 500, "mL"});
  (void)hands.text("source");
  tools.thermometer_step_c = thermometer.number("step_c", {0.1, 5, "degrees C"});
  tools.thermometer_bulb_ml = thermometer.number("least_ml", {0.1, 20, "mL"});
  (void)thermometer.text("source");
}

} // namespace

void read_instruments(const std::filesystem::path& file, World& world, scenario::Problems& problems) {
  strict::File toml(file);
  const strict::Table root = toml.root();
  world.urinometer = read_urinometer(root.table("urinometer"));
  world.urinometer.habits = read_habits(root.table("float_habits"));
  read_heat(root.table("burner"), root.table("bath"), world.tools);
  read_hands(root.table("hands"), root.table("thermometer"), world.tools);
  read_measuring(root, world);
  close(toml, problems);
}

} // namespace matula::assets
