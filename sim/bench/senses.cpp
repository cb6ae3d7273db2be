#include "sim/bench/senses.hpp"

#include "sim/bench/floating.hpp"
#include "sim/bench/life.hpp"
#include "sim/bench/pour.hpp"
#include "sim/bench/words.hpp"
#include "sim/matter/ph.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace matula::bench {

namespace {

/// What rises from the surface, strongest first.
std::vector<std::string> odours(const matter::Mixture& top, const matter::Catalogue& catalogue) {
  std::vector<std::pair<double, std::string>> found;
  const double ph = matter::ph(top, catalogue);
  constexpr double mmol_per_mol = 1000;
  for (matter::SpeciesId id = 0; id < catalogue.species.size(); ++id) {
    const matter::Species& species = catalogue.species[id];
    if (species.odour.empty() || top.mmol[id] <= 0) {
      continue;
    }
    const double strength = matter::odorous_molar(top, catalogue, id, ph) * mmol_per_mol;
    if (strength >= species.odour_threshold_mmol_per_l) {
      found.emplace_back(strength / std::max(species.odour_threshold_mmol_per_l, 1e-9), species.odour);
    }
  }
  std::stable_sort(found.begin(), found.end(),
                   [](const auto& a, const auto& b) { return a.first > b.first; });
  std::vector<std::string> words;
  for (const auto& [strength, word] : found) {
    if (std::find(words.begin(), words.end(), word) == words.end()) {
      words.push_back(word);
    }
  }
  return words;
}

} // namespace

Outcome take_temperature(State& state, const Setup& setup, const Thermometer& action) {
  const auto found = state.vessels.find(action.vessel);
  if (found == state.vessels.end()) {
    return refused(no_such_vessel(action.vessel));
  }
  Vessel& vessel = found->second;
  if (vessel.column.volume_ml() < setup.tools.thermometer_bulb_ml) {
    return refused("Too little liquid in " + spoken(action.vessel) + " to cover the thermometer's bulb.");
  }
  if (vessel.place == Place::Flame && state.flame_on) {
    return refused("Take " + spoken(action.vessel) + " out of the flame first.");
  }
  Outcome outcome;
  outcome.caution = touch(state, vessel, action.vessel);
  catch_up(state, setup, action.vessel, vessel);
  const double step_c = setup.tools.thermometer_step_c;
  outcome.thermometer_c = std::round(column::mean_temperature_c(vessel.column) / step_c) * step_c;
  return outcome;
}

Outcome smell(State& state, const Setup& setup, const Smell& action) {
  const auto found = state.vessels.find(action.vessel);
  if (found == state.vessels.end()) {
    return refused(no_such_vessel(action.vessel));
  }
  Vessel& vessel = found->second;
  if (vessel.column.volume_ml() <= 0) {
    return refused("There is nothing in " + spoken(action.vessel) + " to smell.");
  }
  Outcome outcome;
  outcome.caution = touch(state, vessel, action.vessel);
  catch_up(state, setup, action.vessel, vessel);
  const column::Column& column = vessel.column;
  const matter::Catalogue& catalogue = *setup.chemistry->catalogue;
  outcome.odours = odours(column.layers.empty() ? column.sediment : column.layers.back(), catalogue);
  if (column.heavy.volume_ml > 0 && !catalogue.heavy.odour.empty()) {
    outcome.odours.insert(outcome.odours.begin(), catalogue.heavy.odour);
  }
  return outcome;
}

Outcome look_closely(State& state, const Setup& setup, const Look& action) {
  const auto found = state.vessels.find(action.vessel);
  if (found == state.vessels.end()) {
    return refused(no_such_vessel(action.vessel));
  }
  catch_up(state, setup, action.vessel, found->second);
  found->second.trace.looked_at_s.push_back(state.time_s);
  if (state.floating && state.floating->vessel == action.vessel) {
    remember_water_reading(state, setup);
  }
  return {};
}

} // namespace matula::bench
