#include "sim/bench/flame.hpp"

#include "sim/bench/chance.hpp"

#include <algorithm>

namespace matula::bench {

void play_flame(column::Surroundings& surroundings, const Vessel& vessel, const Tools& tools) {
  const double level_mm = vessel.column.shape.level_mm(vessel.column.volume_ml());
  const double centre_mm = std::clamp(vessel.held.height, 0.0, 1.0) * level_mm;
  const double half_mm = std::min(tools.flame_height_mm, level_mm) / 2;
  // A flame at the very top or bottom still has its whole width on the tube.
  const double middle_mm = std::clamp(centre_mm, half_mm, level_mm - half_mm);
  surroundings.flame_power_w = tools.flame_w;
  surroundings.flame_from_mm = middle_mm - half_mm;
  surroundings.flame_to_mm = middle_mm + half_mm;
}

void bump(State& state, const Setup& setup, const VesselName& name, Vessel& vessel, double seconds) {
  const Tools& tools = setup.tools;
  column::Column& column = vessel.column;
  if (column.boiling < tools.bump_boiling) {
    return;
  }
  const bool overfilled = column.volume_ml() > column.shape.capacity_ml / 2;
  const double still = vessel.held.moving ? 0 : tools.bumps_per_s;
  const double full = overfilled ? tools.bumps_per_s_moving : 0;
  const double likelihood = (still + full) * column.boiling * seconds;
  const std::uint64_t who = hash_name(name);
  if (chance(setup.seed, Purpose::Bump, who, state.random_counter++) >= likelihood) {
    return;
  }
  const double size = chance(setup.seed, Purpose::Bump, who, state.random_counter++);
  const double thrown_ml = tools.bump_low_ml + size * (tools.bump_high_ml - tools.bump_low_ml);
  column.boil_over_ml += column::draw_out(column, thrown_ml, *setup.chemistry->catalogue).volume_ml;
}

} // namespace matula::bench
