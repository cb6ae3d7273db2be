#pragma once

#include "sim/bench/bench.hpp"

namespace matula::bench {

Outcome pour(State& state, const Setup& setup, const Pour& action);
Outcome dispense(State& state, const Setup& setup, const Dispense& action);
Outcome mix(State& state, const Setup& setup, const Mix& action);
Outcome discard(State& state, const Setup& setup, const Discard& action);

/// Notes a bare hand on what may carry infection; gives the caution to show, the first time only.
std::string touch(State& state, const Vessel& vessel, const VesselName& name);

} // namespace matula::bench
