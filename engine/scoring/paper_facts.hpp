#pragma once

#include "engine/scoring/facts.hpp"
#include "engine/scoring/rulebook.hpp"
#include "sim/bench/bench.hpp"

#include <string>

namespace matula::scoring {

/// What a piece of paper went through up to now; none for a piece that is not there. Times of reading are
/// told only when a result was `written`: who wrote nothing has not read too late.
[[nodiscard]] Facts paper_facts(const bench::State& state, const std::string& piece, const TestRule& test,
                                bool written);

} // namespace matula::scoring
