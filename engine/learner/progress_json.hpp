#pragma once

#include "engine/learner/progress.hpp"

#include <string>

namespace matula::learner {

/// All figures and sentences as one JSON object.
[[nodiscard]] std::string to_json(const Progress& progress);

} // namespace matula::learner
