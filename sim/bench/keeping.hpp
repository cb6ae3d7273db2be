#pragma once

#include "sim/ageing/keeping.hpp"
#include "sim/ageing/laws.hpp"
#include "sim/bench/bench.hpp"

namespace matula::bench {

/// Lets the filled cup live from the void to the bench: its legs, its preservatives, and the hours it stood.
/// Chemistry and life by the ageing room on the whole cup, solids and settling by the column, in turns.
void keep(column::Column& cup, ageing::Gas& gas, const Setup& setup);

/// Whether anything in the vessel lives, falls apart or goes to the air slowly.
[[nodiscard]] bool lives(const column::Column& column, const Setup& setup);

/// Lets what lives in a vessel on the bench do so for `hours`; the bench works out its chemistry.
void live_on(column::Column& column, const Setup& setup, double hours);

} // namespace matula::bench
