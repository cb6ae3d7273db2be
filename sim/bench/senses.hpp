#pragma once

#include "sim/bench/bench.hpp"

namespace matula::bench {

Outcome take_temperature(State& state, const Setup& setup, const Thermometer& action);
Outcome smell(State& state, const Setup& setup, const Smell& action);
Outcome look_closely(State& state, const Setup& setup, const Look& action);

} // namespace matula::bench
