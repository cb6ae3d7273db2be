#include "sim/bench/floating.hpp"

#include "sim/bench/chance.hpp"
#include "sim/bench/life.hpp"
#include "sim/bench/words.hpp"
#include "sim/matter/density.hpp"
#include "sim/matter/surface.hpp"

#include <algorithm>

namespace matula::bench {

namespace {

constexpr double least_gap_mm = 1; // between bulb and glass on both sides together

instrument::Chance draw_chance(State& state, const Setup& setup, const VesselName& vessel) {
  const auto next = [&] {
    return chance(setup.seed, Purpose::Lowering, hash_name(vessel), state.random_counter++);
  };
  instrument::Chance drawn;
  drawn.wall_side = next();
  drawn.wall_size = next();
  drawn.bubble_size = next();
  return drawn;
}

void let_go(State& state, const Setup& setup, const VesselName& name, bool wiped, bool spun) {
  const instrument::Bath bath = bath_for_float(state.vessels.at(name), setup);
  const instrument::Chance drawn = draw_chance(state, setup, name);
  state.floating = FloatState{name, instrument::lower(setup.urinometer, bath, wiped, spun, drawn)};
}

Outcome no_float() {
  return refused("The float is not in a vessel: lower it first.");
}

} // namespace

instrument::Bath bath_for_float(const Vessel& vessel, const Setup& setup) {
  const column::Column& column = vessel.column;
  const matter::Catalogue& catalogue = *setup.chemistry->catalogue;
  instrument::Bath bath;
  bath.volume_ml = column.volume_ml();
  bath.inner_diameter_mm = column.shape.inner_diameter_mm;
  bath.temperature_c = column::mean_temperature_c(column);
  double mass = 0;
  double volume_ml = 0;
  for (const matter::Mixture& layer : column.layers) {
    mass += matter::density_kg_m3(layer, catalogue) * layer.volume_ml;
    volume_ml += layer.volume_ml;
  }
  mass += catalogue.heavy.density_kg_m3 * column.heavy.volume_ml;
  volume_ml += column.heavy.volume_ml;
  bath.density_kg_m3 = volume_ml > 0 ? mass / volume_ml : matter::density_kg_m3(column.sediment, catalogue);
  const matter::Mixture& top = column.layers.empty() ? column.sediment : column.layers.back();
  bath.surface_tension_mn_m = matter::surface_tension_mn_m(top, catalogue);
  return bath;
}

void bob(State& state, const Setup& setup, double seconds) {
  if (state.floating) {
    const instrument::Bath bath = bath_for_float(state.vessels.at(state.floating->vessel), setup);
    instrument::advance(state.floating->state, setup.urinometer, bath, seconds);
  }
}

void remember_water_reading(State& state, const Setup& setup) {
  const auto scale = scale_view(state, setup);
  if (!scale || state.vessels.at(state.floating->vessel).column.volume_ml() <= 0) {
    return;
  }
  const matter::Mixture liquid =
      column::whole(state.vessels.at(state.floating->vessel).column, *setup.chemistry->catalogue);
  constexpr double clean_g_per_ml =
      1e-4; // A rinse's worth of solute moves the scale by a tenth of a division.
  if (matter::solute_mass_g(liquid, *setup.chemistry->catalogue) < clean_g_per_ml * liquid.volume_ml) {
    state.float_last_in_water_reading = scale->reading_at_surface;
  }
}

Outcome lower_float(State& state, const Setup& setup, const Float& action) {
  const auto found = state.vessels.find(action.vessel);
  if (found == state.vessels.end()) {
    return refused(no_such_vessel(action.vessel));
  }
  if (state.floating) {
    return refused("Lift the float out of " + spoken(state.floating->vessel) + " first.");
  }
  Vessel& vessel = found->second;
  const column::VesselShape& shape = vessel.column.shape;
  if (shape.inner_diameter_mm < setup.urinometer.bulb_diameter_mm + least_gap_mm) {
    return refused("The float is wider than " + spoken(action.vessel) + ": use the jar.");
  }
  if (vessel.column.volume_ml() <= 0) {
    return refused("There is nothing in " + spoken(action.vessel) + " to float in.");
  }
  if (shape.level_mm(vessel.column.volume_ml() + setup.urinometer.bulb_volume_ml) > shape.height_mm) {
    return refused("Liquid would run over: pour some out of " + spoken(action.vessel) + " first.");
  }
  catch_up(state, setup, action.vessel, vessel);
  let_go(state, setup, action.vessel, action.wiped, action.spun);
  return {};
}

Outcome lift_float(State& state, const Setup& setup) {
  if (!state.floating) {
    return no_float();
  }
  remember_water_reading(state, setup);
  state.floating.reset();
  return {};
}

Outcome spin_float(State& state, const Setup& setup) {
  if (!state.floating) {
    return no_float();
  }
  instrument::spin(state.floating->state, setup.urinometer);
  return {};
}

Outcome clear_bubbles(State& state, const Setup& setup) {
  if (!state.floating) {
    return no_float();
  }
  // The hand that lowers it again leaves it where it leaned before.
  const bool leaned = state.floating->state.touches_wall;
  let_go(state, setup, VesselName(state.floating->vessel), true, !leaned);
  return {};
}

std::optional<instrument::ScaleView> scale_view(const State& state, const Setup& setup) {
  if (!state.floating) {
    return std::nullopt;
  }
  const instrument::Bath bath = bath_for_float(state.vessels.at(state.floating->vessel), setup);
  return instrument::read_scale(setup.urinometer, state.floating->state, bath);
}

} // namespace matula::bench
