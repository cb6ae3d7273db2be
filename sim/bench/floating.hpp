#pragma once

#include "sim/bench/bench.hpp"

namespace matula::bench {

/// The liquid of a vessel as a float meets it.
[[nodiscard]] instrument::Bath bath_for_float(const Vessel& vessel, const Setup& setup);

/// Lets the float that is in a vessel bob and turn.
void bob(State& state, const Setup& setup, double seconds);

/// Keeps what the float shows while it stands in water alone.
void remember_water_reading(State& state, const Setup& setup);

Outcome lower_float(State& state, const Setup& setup, const Float& action);
Outcome lift_float(State& state, const Setup& setup);
Outcome spin_float(State& state, const Setup& setup);
Outcome clear_bubbles(State& state, const Setup& setup);

} // namespace matula::bench
