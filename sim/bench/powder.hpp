#pragma once

#include "sim/bench/bench.hpp"

namespace matula::bench {

Outcome sprinkle(State& state, const Setup& setup, const SprinkleSulphur& action);
Outcome tap(State& state, const Setup& setup, const Tap& action);

/// Lets grains on the surface be wetted and sink for `seconds`.
void live_powder(const Setup& setup, Vessel& vessel, double seconds);

[[nodiscard]] appearance::Powder look_at_powder(const Setup& setup, const Vessel& vessel,
                                                const appearance::View& view);

} // namespace matula::bench
