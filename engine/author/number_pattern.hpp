#pragma once

#include "engine/scenario/quantity.hpp"

#include <string>

namespace matula::author {

/// A regular expression (ECMA 262) for the whole numbers from `low` to `high`, 0 or more.
[[nodiscard]] std::string whole_numbers(long long low, long long high);

/// A regular expression for a quantity as an author writes it: every unit of the measure with its own range.
/// Ends that are no whole numbers are taken to the next whole number outwards, and a number with an exponent
/// is taken whatever its size: the reader of scenarios is stricter there.
[[nodiscard]] std::string quantity_pattern(const scenario::Measure& measure);

} // namespace matula::author
