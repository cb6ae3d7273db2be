#pragma once

#include "engine/scoring/curve_watch.hpp"
#include "engine/scoring/facts.hpp"

namespace matula::scoring {

/// How the tubes of a curve were made and read; the last reading of each tube counts.
[[nodiscard]] Facts curve_facts(const TestRule& test, const PhotometerBook& book);

} // namespace matula::scoring
