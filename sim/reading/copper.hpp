#pragma once

#include "sim/reading/reference_reader.hpp"

namespace matula::reading {

/// Grades reduced copper by the hue of the tube and its precipitate on the white card.
[[nodiscard]] GradeReading read_copper(const Looks& looks, const Thresholds& thresholds);

} // namespace matula::reading
