#include "engine/scoring/tube_facts.hpp"

#include <algorithm>
#include <cmath>

namespace matula::scoring {
namespace {

bool is_reagent(const TestRule& test, const std::string& what) {
  return std::find(test.reagents.begin(), test.reagents.end(), what) != test.reagents.end();
}

void add_volumes(Facts& facts, const bench::State& state, const bench::VesselName& vessel,
                 const TestRule& test, double drop_ml) {
  const auto& trace = state.vessels.at(vessel).trace;
  const double urine = urine_ml(state, vessel);
  const double reagent = reagent_ml(trace, test);
  facts["urine_ml"] = urine;
  facts["water_ml"] = water_ml(state, vessel);
  facts["reagent_ml"] = reagent;
  facts["acid_per_urine"] = urine > 0 ? reagent / urine : 0;
  facts["acid_drops"] = std::round(reagent / drop_ml);
  if (reagent > 0) {
    facts["acid_drops_if_any"] = facts["acid_drops"];
  }
  facts["temperature_at_first_use_c"] = trace.temperature_at_first_use_c;
}

void add_heat(Facts& facts, const bench::VesselTrace& trace) {
  facts["seconds_above_90c"] = trace.seconds_above_90c;
  facts["boiling_s"] = trace.boiling_seconds;
  facts["heated_s"] = trace.seconds_in_flame + trace.seconds_in_bath;
  facts["in_flame_s"] = trace.seconds_in_flame;
  facts["in_bath_s"] = trace.seconds_in_bath;
  facts["hottest_c"] = trace.hottest_c;
  facts["boil_over_ml"] = trace.boil_over_ml;
}

/// Facts that depend on how hot the tube had been when something went in.
void add_order(Facts& facts, const bench::VesselTrace& trace, const TestRule& test,
               const std::vector<HeatAtAddition>& additions) {
  constexpr double alone_s = 10; // Shorter than this over the flame is no boiling of the reagent alone.
  const auto acid = std::find_if(additions.begin(), additions.end(),
                                 [&](const HeatAtAddition& a) { return is_reagent(test, a.what); });
  const auto urine = std::find_if(additions.begin(), additions.end(),
                                  [&](const HeatAtAddition& a) { return !is_reagent(test, a.what); });
  if (acid != additions.end()) {
    facts["hot_after_acid_s"] = trace.seconds_above_90c - acid->seconds_above_90c;
    facts["acid_after_boiling"] = acid->seconds_above_90c > 0 ? 1 : 0;
  }
  if (urine != additions.end()) {
    facts["seconds_above_90c_with_urine"] = trace.seconds_above_90c - urine->seconds_above_90c;
    facts["reagent_heated_alone"] = urine->heated_s >= alone_s ? 1 : 0;
  }
}

void add_mixing(Facts& facts, const bench::VesselTrace& trace, double now_s) {
  if (trace.additions.empty()) {
    return;
  }
  const double last = trace.additions.back().time_s;
  facts["seconds_since_last_addition"] = now_s - last;
  facts["poured_gently"] = trace.additions.back().gently ? 1 : 0;
  facts["mixed_after_last_addition"] = mixed_since_last_addition(trace) ? 1 : 0;
}

} // namespace

Facts tube_facts(const bench::State& state, const bench::VesselName& vessel, const TestRule& test,
                 const Watch& watch, double drop_ml) {
  Facts facts;
  const auto& trace = state.vessels.at(vessel).trace;
  add_volumes(facts, state, vessel, test, drop_ml);
  add_heat(facts, trace);
  if (const auto found = watch.additions.find(vessel); found != watch.additions.end()) {
    add_order(facts, trace, test, found->second);
  }
  add_mixing(facts, trace, state.time_s);
  if (const auto cards = watch.cards.find(vessel); cards != watch.cards.end()) {
    facts["looked_on_black"] = cards->second.count(appearance::Card::Black) > 0 ? 1 : 0;
    facts["looked_on_white"] = cards->second.count(appearance::Card::White) > 0 ? 1 : 0;
  }
  return facts;
}

Facts float_facts(const Watch& watch, double calibration_c) {
  Facts facts;
  facts["zero_checked"] = watch.in_water ? 1 : 0;
  if (!watch.in_specimen) {
    return facts;
  }
  const auto& seen = *watch.in_specimen;
  facts["jar_ml"] = seen.liquid_ml;
  facts["jar_grounded"] = seen.state.grounded ? 1 : 0;
  facts["float_touches_wall"] = seen.state.touches_wall ? 1 : 0;
  facts["float_wiped"] = seen.wiped ? 1 : 0;
  facts["float_spun"] = seen.spun ? 1 : 0;
  facts["bubble_ml"] = seen.state.bubble_volume_ml;
  facts["thermometer_used"] = watch.thermometer_c.count(seen.vessel) > 0 ? 1 : 0;
  facts["degrees_from_float"] = seen.liquid_c - calibration_c;
  if (const auto eye = watch.eye_mm.find(seen.vessel); eye != watch.eye_mm.end()) {
    facts["eye_off_mm"] = std::abs(eye->second);
  }
  return facts;
}

namespace {

/// Only where there was an occasion: who never opened such a bottle is neither praised nor blamed.
void add_hazards(Facts& facts, const bench::Hazards& hazards) {
  const auto add = [&facts](const char* name, bool occasion, double value) {
    if (occasion) {
      facts[name] = value;
    }
  };
  add("opened_outside_hood", hazards.hood_bottles > 0, hazards.outside_hood.times);
  const bool flammable = hazards.flammable_bottles + hazards.flammable_near_flame.times > 0;
  add("flammable_near_flame", flammable, hazards.flammable_near_flame.times);
  add("wrong_bin", hazards.bins > 0, hazards.wrong_bin.times);
  add("cyanide_freed", hazards.cyanide_freed.times > 0, hazards.cyanide_freed.times);
  add("chlorine_freed", hazards.chlorine_freed.times > 0, hazards.chlorine_freed.times);
  add("spill_left_ml", hazards.spilled_all_ml > 0, hazards.spilled_ml);
  add("unbalanced_rotor", hazards.spins + hazards.unbalanced_rotor.times > 0, hazards.unbalanced_rotor.times);
}

} // namespace

Facts safety_facts(const bench::State& state, const Watch& watch) {
  Facts facts;
  double pointed = watch.pointed_at_person_s;
  double still = watch.held_still_s;
  for (const auto& [name, vessel] : state.vessels) {
    pointed += vessel.trace.seconds_pointed_at_person;
    still += vessel.trace.seconds_held_still_in_flame;
  }
  // Where there was no occasion there is no fact, and nothing to be earned by leaving a thing alone.
  if (watch.flame_lit) {
    facts["pointed_at_person_s"] = pointed;
    facts["held_still_s"] = still;
    facts["flame_left_on"] = state.flame_on ? 1 : 0;
  }
  if (watch.flame_lit || state.heated_without_goggles_s >= 0) { // A bath heats too.
    facts["heated_without_goggles"] = state.heated_without_goggles_s >= 0 ? 1 : 0;
    facts["goggles_off_at_s"] = state.heated_without_goggles_s;
  }
  if (watch.something_handled) {
    facts["handled_without_gloves"] = state.handled_without_gloves_s >= 0 ? 1 : 0;
    facts["gloves_off_at_s"] = state.handled_without_gloves_s;
  }
  if (watch.strong_reagents > 0) {
    facts["acid_without_goggles"] = watch.strong_reagents_without_goggles;
  }
  add_hazards(facts, state.hazards);
  return facts;
}

} // namespace matula::scoring
