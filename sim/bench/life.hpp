#pragma once

#include "sim/bench/bench.hpp"

namespace matula::bench {

/// Brings a vessel up to the bench's present tick.
void catch_up(State& state, const Setup& setup, const VesselName& name, Vessel& vessel);

/// After a hand has changed a caught-up vessel: it is watched closely again.
void disturbed(const State& state, const Setup& setup, Vessel& vessel);

[[nodiscard]] double bench_s(const State& state); ///< Time of the present tick.

/// Temperature of the hottest layer; below absolute zero for an empty vessel.
[[nodiscard]] double hottest_c(const column::Column& column);

} // namespace matula::bench
