#include "sim/bench/hazards.hpp"

#include "sim/bench/words.hpp"

#include <algorithm>
#include <array>

namespace matula::bench {

namespace {

// Waste words of bottles, as assets name them.
constexpr const char* acid = "acid";
constexpr const char* ammonia = "ammonia";
constexpr const char* bleach = "bleach";
constexpr const char* heavy_metal = "heavy_metal";
constexpr const char* nitroprusside = "nitroprusside";
constexpr const char* solvent = "solvent";

bool holds(const std::vector<std::string>& words, const char* word) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

/// The bin the contents call for, the most dangerous word first; Biohazard for plain specimen.
Bin right_bin(const std::vector<std::string>& words) {
  const std::array<std::pair<const char*, Bin>, 4> order{{{nitroprusside, Bin::Nitroprusside},
                                                          {solvent, Bin::Solvent},
                                                          {heavy_metal, Bin::HeavyMetal},
                                                          {acid, Bin::Acid}}};
  for (const auto& [word, bin] : order) {
    if (holds(words, word)) {
      return bin;
    }
  }
  return Bin::Biohazard;
}

/// Urine alone may go down the sink with plenty of water; nothing else has a second choice.
bool fits(const std::vector<std::string>& words, Bin bin) {
  const Bin right = right_bin(words);
  if (bin == right) {
    return true;
  }
  // Unsorted waste is a fault only where a bin of its own is needed for the sake of people or water.
  return right == Bin::Biohazard ? bin == Bin::Sink || bin == Bin::Waste
                                 : right == Bin::Acid && bin == Bin::Waste;
}

constexpr double mostly =
    0.3; // share of flammable liquid whose vapour still catches, as spirit does; fitted here

} // namespace

void merge_waste(Vessel& vessel, const std::vector<std::string>& words) {
  for (const std::string& word : words) {
    if (!word.empty() && !holds(vessel.waste, word.c_str())) {
      vessel.waste.push_back(word);
    }
  }
  std::sort(vessel.waste.begin(), vessel.waste.end());
}

std::string open_bottle(State& state, const matter::Reagent& reagent, Vessel& to) {
  std::string caution;
  state.hazards.hood_bottles += reagent.hood ? 1 : 0;
  state.hazards.flammable_bottles += reagent.flammable ? 1 : 0;
  if (reagent.hood && !state.hood) {
    state.hazards.outside_hood.note(state.time_s);
    caution = "hood";
  }
  if (reagent.flammable && state.flame_on) {
    state.hazards.flammable_near_flame.note(state.time_s);
    caution = "flammable";
  }
  const bool bleaches = reagent.waste == bleach;
  const bool bleached = holds(to.waste, bleach);
  const bool sours = reagent.waste == acid || reagent.waste == ammonia;
  if ((bleaches && (holds(to.waste, acid) || holds(to.waste, ammonia))) || (bleached && sours)) {
    state.hazards.chlorine_freed.note(state.time_s);
    caution = "bleach";
  }
  if (reagent.waste == acid && holds(to.waste, nitroprusside)) {
    state.hazards.cyanide_freed.note(state.time_s);
    caution = "cyanide";
  }
  merge_waste(to, {reagent.waste});
  return caution;
}

std::string throw_away(State& state, const Vessel& vessel, Bin bin) {
  if (vessel.column.volume_ml() <= 0) {
    return "";
  }
  ++state.hazards.bins;
  const bool cyanide = (holds(vessel.waste, nitroprusside) && bin == Bin::Acid) ||
                       (holds(vessel.waste, acid) && bin == Bin::Nitroprusside);
  if (cyanide) {
    state.hazards.cyanide_freed.note(state.time_s);
  }
  if (fits(vessel.waste, bin)) {
    return "";
  }
  state.hazards.wrong_bin.note(state.time_s);
  return cyanide ? "cyanide" : "waste";
}

bool flammable_in_the_open(const State& state, const Setup& setup) {
  if (state.hood) {
    return false;
  }
  return std::any_of(state.vessels.begin(), state.vessels.end(), [&setup](const auto& entry) {
    double all_ml = 0;
    double flammable_ml = 0;
    for (const VesselTrace::Addition& addition : entry.second.trace.additions) {
      const matter::Reagent* reagent = setup.chemistry->catalogue->find_reagent(addition.what);
      all_ml += addition.volume_ml;
      flammable_ml += reagent != nullptr && reagent->flammable ? addition.volume_ml : 0;
    }
    return flammable_ml > mostly * all_ml;
  });
}

void spill(State& state, const Vessel& vessel, double volume_ml) {
  if (volume_ml <= 0) {
    return;
  }
  Hazards& hazards = state.hazards;
  hazards.spilled_ml += volume_ml;
  hazards.spilled_all_ml += volume_ml;
  for (const std::string& word : vessel.waste) {
    if (!holds(hazards.spilled_waste, word.c_str())) {
      hazards.spilled_waste.push_back(word);
    }
  }
}

Outcome wipe_spill(State& state, const WipeSpill& action) {
  Hazards& hazards = state.hazards;
  if (hazards.spilled_ml <= 0) {
    return refused("Nothing was spilled.");
  }
  Outcome outcome;
  if (action.bleach && (holds(hazards.spilled_waste, acid) || holds(hazards.spilled_waste, ammonia))) {
    hazards.chlorine_freed.note(state.time_s);
    outcome.caution = "bleach";
  }
  hazards.spilled_ml = 0;
  hazards.spilled_waste.clear();
  return outcome;
}

} // namespace matula::bench
