#pragma once

#include "engine/scoring/rulebook.hpp"
#include "sim/bench/bench.hpp"

#include <string>

namespace matula::scoring {

/// Millilitres of the specimen that went into a vessel, directly or by way of other vessels.
[[nodiscard]] double urine_ml(const bench::State& state, const bench::VesselName& vessel);

/// The same by what is known to have gone into it.
[[nodiscard]] double urine_ml(const bench::State& state, const bench::VesselTrace& trace);

/// Millilitres of distilled water that went into a vessel.
[[nodiscard]] double water_ml(const bench::State& state, const bench::VesselName& vessel);

/// Millilitres of a test's reagents in a vessel, each counted by its strength.
[[nodiscard]] double reagent_ml(const bench::VesselTrace& trace, const TestRule& test);

/// Whether a vessel was mixed after the last thing went into it; a mixing that ended in that very second came
/// before.
[[nodiscard]] bool mixed_since_last_addition(const bench::VesselTrace& trace);

/// The tube in which a test was done, known from what went into it and not from its name or place: the one
/// looked at or added to last; for a test paper, the last piece of its kind; for a filter paper, the last one
/// that such a tube went through. Empty when there is none.
[[nodiscard]] bench::VesselName find_tube(const bench::State& state, const Rulebook& book,
                                          const TestRule& test);

} // namespace matula::scoring
