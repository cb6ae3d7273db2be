#pragma once

#include "engine/scoring/facts.hpp"
#include "engine/scoring/watch.hpp"

namespace matula::scoring {

/// What a test's tube went through up to now: volumes, heat, mixing, time and looks.
[[nodiscard]] Facts tube_facts(const bench::State& state, const bench::VesselName& vessel,
                               const TestRule& test, const Watch& watch, double drop_ml);

/// How the float stood and was looked at when the specific gravity was read.
[[nodiscard]] Facts float_facts(const Watch& watch, double calibration_c);

/// What can hurt someone, over the whole sitting so far.
[[nodiscard]] Facts safety_facts(const bench::State& state, const Watch& watch);

} // namespace matula::scoring
