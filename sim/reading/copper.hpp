#pragma once

#include "sim/reading/reference_reader.hpp"

#include <vector>

namespace matula::reading {

/// Grades reduced copper by the hue of the tube and its precipitate on the white card.
[[nodiscard]] GradeReading read_copper(const Looks& looks, const Thresholds& thresholds);

/// What is seen at each grade.
[[nodiscard]] std::vector<std::string> copper_table();

} // namespace matula::reading
