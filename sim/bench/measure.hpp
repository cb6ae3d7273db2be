#pragma once

#include "sim/bench/bench.hpp"

namespace matula::bench {

Outcome refract(State& state, const Setup& setup, const Refract& action);
Outcome measure(State& state, const Setup& setup, const Measure& action);

/// What the photometer's beam loses in a vessel at a wavelength, decadic, before any zero.
[[nodiscard]] double beam_extinction(const Setup& setup, const column::Column& column, double wavelength_nm);

} // namespace matula::bench
