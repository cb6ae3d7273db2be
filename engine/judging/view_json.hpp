#pragma once

#include "engine/judging/figures.hpp"

#include <string>

namespace matula::judging {

/// The class for a script.
[[nodiscard]] std::string to_json(const ClassView& view);

} // namespace matula::judging
