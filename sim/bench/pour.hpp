#pragma once

#include "sim/bench/bench.hpp"

namespace matula::bench {

Outcome pour(State& state, const Setup& setup, const Pour& action);
Outcome dispense(State& state, const Setup& setup, const Dispense& action);
Outcome mix(State& state, const Setup& setup, const Mix& action);
Outcome discard(State& state, const Setup& setup, const Discard& action);

/// The vessel of that name; null when there is none.
[[nodiscard]] Vessel* find(State& state, const VesselName& name);

/// Why `volume_ml` cannot go into the vessel; empty when it can.
[[nodiscard]] std::string no_room(const VesselName& name, const Vessel& vessel, double volume_ml);

/// Why `volume_ml` cannot be taken from the vessel; empty when it can.
[[nodiscard]] std::string nothing_to_pour(const State& state, const VesselName& name, const Vessel& vessel,
                                          double volume_ml);

/// Puts liquid into a vessel now, and writes down what came in.
void add(State& state, const Setup& setup, const VesselName& name, Vessel& vessel,
         const matter::Mixture& liquid, const VesselTrace::Addition& noted, bool heavy = false);

/// What a hand takes from a bottle of this bench, at the age and temperature it has.
[[nodiscard]] matter::Mixture dose(const Setup& setup, const matter::Reagent& reagent, double volume_ml);

/// Notes a bare hand on what may carry infection; gives the caution to show, the first time only.
std::string touch(State& state, const Vessel& vessel, const VesselName& name);

} // namespace matula::bench
