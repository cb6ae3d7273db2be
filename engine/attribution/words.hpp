#pragma once

#include "engine/attribution/explanation.hpp"

namespace matula::attribution {

/// "half a grade", "two grades", "0.002"; to the nearest half grade or 0.001, its sign left out.
[[nodiscard]] std::string say_difference(double amount, bool in_grades);

/// An amount or a time that broke no rule.
[[nodiscard]] bool within_method(const Share& share);

/// The whole explanation: what was there, what would have been there, whose fault each part was, and what is
/// left.
[[nodiscard]] std::string say(const Explanation& explanation);

} // namespace matula::attribution
