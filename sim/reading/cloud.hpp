#pragma once

#include "sim/reading/reference_reader.hpp"

#include <vector>

namespace matula::reading {

/// Grades a cloud. After heat the unheated lower part of the same tube is the control; after acid a clear
/// tube is.
[[nodiscard]] GradeReading read_cloud(bool against_lower_part, const Looks& looks,
                                      const Thresholds& thresholds);

/// What is seen at each grade.
[[nodiscard]] std::vector<std::string> cloud_table();

} // namespace matula::reading
