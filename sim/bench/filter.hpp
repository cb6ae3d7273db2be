#pragma once

#include "sim/bench/bench.hpp"

namespace matula::bench {

/// Share of particles of this width that a paper holds back, 0..1.
[[nodiscard]] double held_back(const Tools& tools, double diameter_um);

Outcome filter(State& state, const Setup& setup, const Filter& action);

} // namespace matula::bench
