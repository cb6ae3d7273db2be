#include "sim/bench/scene.hpp"

#include "sim/appearance/optics_tables.hpp"
#include "sim/bench/bench.hpp"
#include "sim/bench/chance.hpp"
#include "sim/bench/floating.hpp"
#include "sim/bench/papers.hpp"
#include "sim/bench/powder.hpp"

#include <algorithm>

namespace matula::bench {

namespace {

/// A float pushes the liquid up: everything seen in it moves up in proportion.
void raise_level(appearance::Appearance& looks, double level_mm) {
  if (looks.level_mm <= 0 || level_mm <= looks.level_mm) {
    return;
  }
  const double stretch = level_mm / looks.level_mm;
  looks.level_mm = level_mm;
  for (appearance::Row& row : looks.rows) {
    row.height_mm *= stretch;
    row.thickness_mm *= stretch;
  }
  for (appearance::Piece& piece : looks.pieces) {
    piece.height_mm *= stretch;
  }
}

} // namespace

appearance::Appearance look(const State& state, const Setup& setup, const VesselName& vessel,
                            const appearance::View& view) {
  const auto found = state.vessels.find(vessel);
  if (found == state.vessels.end()) {
    return {};
  }
  const std::uint64_t seed =
      optics::hash(setup.seed ^ static_cast<std::uint64_t>(Purpose::Pieces)) ^ hash_name(vessel);
  appearance::Appearance looks =
      appearance::look_at(found->second.column, *setup.chemistry->catalogue, *setup.optics, view, seed);
  if (found->second.sulphur) {
    looks.powder = look_at_powder(setup, found->second, view);
  }
  if (state.floating && state.floating->vessel == vessel) {
    const instrument::Bath bath = bath_for_float(found->second, setup);
    raise_level(looks, instrument::level_with_float_mm(setup.urinometer, state.floating->state, bath));
  }
  return looks;
}

Scene make_scene(const State& state, const Setup& setup, const appearance::View& view) {
  Scene scene;
  scene.time_s = state.time_s;
  scene.flame_on = state.flame_on;
  scene.hood = state.hood;
  scene.spilled_ml = state.hazards.spilled_ml;
  scene.bath_c = state.bath_c;
  scene.room_c = setup.room_c;
  scene.shelf = setup.reagents_out;
  for (const auto& [name, vessel] : state.vessels) {
    scene.vessels.push_back(
        {name, vessel.column.shape.key, vessel.place, vessel.held.height, look(state, setup, name, view)});
  }
  see_papers(scene, state, setup, view.lamp);
  if (const auto scale = scale_view(state, setup)) {
    SeenFloat seen;
    seen.vessel = state.floating->vessel;
    seen.urinometer_without_zero_error = setup.urinometer;
    seen.urinometer_without_zero_error.zero_error = 0;
    seen.state = state.floating->state;
    seen.scale = *scale;
    scene.floating = seen;
  }
  return scene;
}

} // namespace matula::bench
