#pragma once

#include "sim/reading/scale.hpp"

#include <string>
#include <vector>

namespace matula::reading {

/// What is seen at each grade of a scale, lowest first; empty for a test paper beside its card.
[[nodiscard]] std::vector<std::string> grade_table(const Scale& scale);

} // namespace matula::reading
