#include "sim/bench/heating.hpp"

#include "sim/bench/hazards.hpp"
#include "sim/bench/life.hpp"
#include "sim/bench/pour.hpp"
#include "sim/bench/words.hpp"

#include <algorithm>

namespace matula::bench {

namespace {

bool is_tube(const VesselName& name) {
  return name.rfind("tube-", 0) == 0;
}

/// Why the vessel cannot be held in the flame; empty when it can.
std::string not_in_flame(const State& state, const Setup& setup, const Move& action, const Vessel& vessel) {
  if (!is_tube(action.vessel)) {
    return "Only a test tube is held in the flame.";
  }
  if (!state.flame_on) {
    return "The flame is off: light the burner first.";
  }
  if (vessel.column.volume_ml() < setup.tools.flame_reach_ml) {
    return spoken(action.vessel) + " is all but empty: an empty tube would crack in the flame.";
  }
  for (const auto& [name, other] : state.vessels) {
    if (name != action.vessel && other.place == Place::Flame) {
      return "Take " + spoken(name) + " out of the flame first.";
    }
  }
  if (!(action.height >= 0 && action.height <= 1)) {
    return "Say where the flame plays: 0 is the bottom of the liquid, 1 its surface.";
  }
  return "";
}

std::string not_there(const State& state, const Setup& setup, const Move& action, const Vessel& vessel) {
  if (action.place == Place::Flame) {
    return not_in_flame(state, setup, action, vessel);
  }
  if (action.place == Place::Bath && !is_tube(action.vessel)) {
    return "Only test tubes stand in the water bath.";
  }
  return "";
}

/// Everything in or going through flame or bath meets the change at its own time.
void catch_up_heated(State& state, const Setup& setup) {
  for (auto& [name, vessel] : state.vessels) {
    if (vessel.place == Place::Flame || vessel.place == Place::Bath) {
      catch_up(state, setup, name, vessel);
    }
  }
}

} // namespace

Outcome move(State& state, const Setup& setup, const Move& action) {
  const auto found = state.vessels.find(action.vessel);
  if (found == state.vessels.end()) {
    return refused(no_such_vessel(action.vessel));
  }
  Vessel& vessel = found->second;
  std::string why = not_there(state, setup, action, vessel);
  if (!why.empty()) {
    why[0] = why[0] == 't' ? 'T' : why[0];
    return refused(why);
  }
  Outcome outcome;
  outcome.caution = touch(state, vessel, action.vessel);
  if (action.place == Place::Flame && (action.towards_person || !action.moving || !state.goggles)) {
    outcome.caution = "flame";
  }
  catch_up(state, setup, action.vessel, vessel);
  vessel.place = action.place;
  vessel.held = action;
  disturbed(state, setup, vessel);
  return outcome;
}

Outcome light_flame(State& state, const Setup& setup, const LightFlame& action) {
  catch_up_heated(state, setup);
  Outcome outcome;
  outcome.caution = action.on && !state.flame_on ? "flame" : "";
  if (action.on && !state.flame_on && flammable_in_the_open(state, setup)) {
    state.hazards.flammable_near_flame.note(state.time_s);
    outcome.caution = "flammable";
  }
  state.flame_on = action.on;
  return outcome;
}

Outcome set_bath(State& state, const Setup& setup, const SetBath& action) {
  constexpr double boiling_c = 100;
  constexpr double seconds_per_min = 60;
  if (!(action.temperature_c >= 0 && action.temperature_c <= boiling_c)) {
    return refused("The bath holds water: set it from 0 to 100 degrees.");
  }
  if (!(action.warming_c_per_min >= 0)) {
    return refused("Say how fast the bath warms: 0 for as fast as it can, or so many degrees a minute.");
  }
  catch_up_heated(state, setup);
  state.bath_target_c = action.temperature_c;
  state.bath_warming_c_per_s = action.warming_c_per_min / seconds_per_min;
  return {};
}

} // namespace matula::bench
