#include "sim/bench/pour.hpp"

#include "sim/bench/hazards.hpp"
#include "sim/bench/life.hpp"
#include "sim/bench/words.hpp"

#include <algorithm>

namespace matula::bench {

namespace {

constexpr double least_ml = 1e-3; // rounding, not liquid

} // namespace

Vessel* find(State& state, const VesselName& name) {
  const auto found = state.vessels.find(name);
  return found == state.vessels.end() ? nullptr : &found->second;
}

/// Why `volume_ml` cannot go into the vessel; empty when it can.
std::string no_room(const VesselName& name, const Vessel& vessel, double volume_ml) {
  if (!(volume_ml > 0)) {
    return "Say how much: more than 0 mL.";
  }
  const double room_ml = vessel.column.shape.capacity_ml - vessel.column.volume_ml();
  if (volume_ml <= room_ml + least_ml) {
    return "";
  }
  if (room_ml < least_ml) {
    return "It would run over: " + spoken(name) + " is full.";
  }
  return "It would run over: " + spoken(name) + " has room for " + spoken_ml(room_ml) + " more.";
}

std::string nothing_to_pour(const State& state, const VesselName& name, const Vessel& vessel,
                            double volume_ml) {
  if (state.floating && state.floating->vessel == name) {
    return "Lift the float out of " + spoken(name) + " first.";
  }
  const double there_ml = vessel.column.volume_ml();
  if (there_ml < least_ml) {
    return "There is nothing in " + spoken(name) + ".";
  }
  if (volume_ml > there_ml + least_ml) {
    return "Only " + spoken_ml(there_ml) + " are left in " + spoken(name) + ".";
  }
  return "";
}

void add(State& state, const Setup& setup, const VesselName& name, Vessel& vessel,
         const matter::Mixture& liquid, const VesselTrace::Addition& noted, bool heavy) {
  catch_up(state, setup, name, vessel);
  if (heavy) {
    column::pour_in_heavy(vessel.column, liquid, *setup.chemistry->catalogue);
  } else {
    column::pour_in(vessel.column, liquid, noted.gently, *setup.chemistry->catalogue);
  }
  vessel.trace.additions.push_back(noted);
  disturbed(state, setup, vessel);
}

std::string touch(State& state, const Vessel& vessel, const VesselName& name) {
  const bool patient = name == "specimen" || (name != "water" && vessel.column.volume_ml() > 0);
  if (!patient || state.gloves || state.handled_without_gloves_s >= 0) {
    return "";
  }
  state.handled_without_gloves_s = state.time_s;
  return "specimen";
}

Outcome pour(State& state, const Setup& setup, const Pour& action) {
  Vessel* from = find(state, action.from);
  Vessel* to = find(state, action.to);
  if (from == nullptr || to == nullptr) {
    return refused(no_such_vessel(from == nullptr ? action.from : action.to));
  }
  if (from == to) {
    return refused("Pour from one vessel into another.");
  }
  std::string why = nothing_to_pour(state, action.from, *from, action.volume_ml);
  why = why.empty() ? no_room(action.to, *to, action.volume_ml) : why;
  if (!why.empty()) {
    return refused(why);
  }
  catch_up(state, setup, action.from, *from);
  if (from->trace.temperature_at_first_use_c < -273) {
    from->trace.temperature_at_first_use_c = column::mean_temperature_c(from->column);
  }
  Outcome outcome;
  outcome.caution = touch(state, *from, action.from);
  const double volume_ml = std::min(action.volume_ml, from->column.volume_ml());
  const matter::Mixture liquid = column::draw_out(from->column, volume_ml, *setup.chemistry->catalogue);
  // What the liquid on top does not give comes from the heavy liquid under it.
  const double under_ml = volume_ml - liquid.volume_ml;
  disturbed(state, setup, *from);
  merge_waste(*to, from->waste);
  if (liquid.volume_ml > 0) {
    add(state, setup, action.to, *to, liquid, {state.time_s, action.from, liquid.volume_ml, action.gently});
  }
  if (under_ml > 0 && from->column.heavy.volume_ml > 0) {
    const matter::Mixture heavy = column::draw_out_heavy(from->column, under_ml);
    add(state, setup, action.to, *to, heavy, {state.time_s, action.from, heavy.volume_ml, action.gently},
        true);
  }
  return outcome;
}

matter::Mixture dose(const Setup& setup, const matter::Reagent& reagent, double volume_ml) {
  const auto aged = setup.bottle_age_days.find(reagent.key);
  const double age_days = aged != setup.bottle_age_days.end() ? aged->second : 0.0;
  return from_bottle(reagent, volume_ml, setup.room_c, age_days, setup.bottle_decays,
                     *setup.chemistry->catalogue);
}

Outcome dispense(State& state, const Setup& setup, const Dispense& action) {
  const matter::Reagent* reagent = setup.chemistry->catalogue->find_reagent(action.reagent);
  const bool out = std::find(setup.reagents_out.begin(), setup.reagents_out.end(), action.reagent) !=
                   setup.reagents_out.end();
  if (reagent == nullptr || !out) {
    return refused("There is no bottle '" + action.reagent + "' on the shelf.");
  }
  Vessel* to = find(state, action.to);
  if (to == nullptr) {
    return refused(no_such_vessel(action.to));
  }
  const std::string why = no_room(action.to, *to, action.volume_ml);
  if (!why.empty()) {
    return refused(why);
  }
  const matter::Mixture liquid = dose(setup, *reagent, action.volume_ml);
  Outcome outcome;
  outcome.caution = reagent->caution;
  const std::string danger = open_bottle(state, *reagent, *to);
  outcome.caution = danger.empty() ? outcome.caution : danger;
  add(state, setup, action.to, *to, liquid, {state.time_s, action.reagent, action.volume_ml, action.gently},
      !reagent->solvent.empty());
  return outcome;
}

Outcome mix(State& state, const Setup& setup, const Mix& action) {
  Vessel* vessel = find(state, action.vessel);
  if (vessel == nullptr) {
    return refused(no_such_vessel(action.vessel));
  }
  if (vessel->column.volume_ml() < least_ml) {
    return refused("There is nothing in " + spoken(action.vessel) + " to mix.");
  }
  if (state.floating && state.floating->vessel == action.vessel) {
    return refused("Lift the float out of " + spoken(action.vessel) + " first.");
  }
  if (vessel->place == Place::Flame && state.flame_on) {
    return refused("Take " + spoken(action.vessel) + " out of the flame first.");
  }
  if (!(action.seconds > 0)) {
    return refused("Say how long to mix: more than 0 s.");
  }
  Outcome outcome;
  outcome.caution = touch(state, *vessel, action.vessel);
  catch_up(state, setup, action.vessel, *vessel);
  state.mixing = action.vessel;
  state.mixing_manner = action.manner;
  advance(state, setup, action.seconds);
  catch_up(state, setup, action.vessel, *vessel);
  state.mixing.clear();
  vessel->trace.mixed_at_s.push_back(state.time_s);
  disturbed(state, setup, *vessel);
  return outcome;
}

Outcome discard(State& state, const Setup& setup, const Discard& action) {
  Vessel* vessel = find(state, action.vessel);
  if (vessel == nullptr) {
    return refused(no_such_vessel(action.vessel));
  }
  if (action.vessel == "specimen" || action.vessel == "water") {
    return refused(action.vessel == "specimen" ? "Keep the specimen: it cannot be collected again."
                                               : "The distilled water stays on the bench.");
  }
  if (state.floating && state.floating->vessel == action.vessel) {
    return refused("Lift the float out of " + spoken(action.vessel) + " first.");
  }
  Outcome outcome;
  outcome.caution = throw_away(state, *vessel, action.bin);
  vessel->column = column::empty_column(vessel->column.shape, *setup.chemistry->catalogue);
  vessel->place = Place::Rack;
  vessel->waste.clear();
  vessel->sulphur.reset();
  // A clean vessel has no history, but what was done to people in the room stays.
  VesselTrace clean;
  clean.seconds_pointed_at_person = vessel->trace.seconds_pointed_at_person;
  clean.seconds_held_still_in_flame = vessel->trace.seconds_held_still_in_flame;
  vessel->trace = clean;
  disturbed(state, setup, *vessel);
  return outcome;
}

} // namespace matula::bench
