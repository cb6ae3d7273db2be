#pragma once

#include "sim/bench/bench.hpp"

namespace matula::bench {

Outcome move(State& state, const Setup& setup, const Move& action);
Outcome light_flame(State& state, const Setup& setup, const LightFlame& action);
Outcome set_bath(State& state, const Setup& setup, const SetBath& action);

} // namespace matula::bench
