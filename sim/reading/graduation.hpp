#pragma once

#include "sim/appearance/appearance.hpp"

#include <optional>

namespace matula::reading {

/// What the numbers on the glass say at the top of the deposit, straight between neighbouring lines; below
/// the lowest number 0 at the bottom is taken. Nothing for a vessel without a scale of at least two numbers.
[[nodiscard]] std::optional<double> read_graduation(const appearance::Appearance& looks);

} // namespace matula::reading
