#pragma once

#include "sim/reading/reference_reader.hpp"

namespace matula::reading {

/// Grades a strewn powder by the share of it that no longer floats; a surface without powder reads negative.
[[nodiscard]] GradeReading read_powder(const Looks& looks, const PowderScale& scale);

} // namespace matula::reading
