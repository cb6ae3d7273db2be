#pragma once

#include "sim/bench/bench.hpp"

namespace matula::bench {

/// Puts the flame's heat where the tube is held over it.
void play_flame(column::Surroundings& surroundings, const Vessel& vessel, const Tools& tools);

/// Steam that forms at once under a still or overfilled tube throws liquid out.
void bump(State& state, const Setup& setup, const VesselName& name, Vessel& vessel, double seconds);

} // namespace matula::bench
