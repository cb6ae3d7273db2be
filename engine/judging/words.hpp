#pragma once

#include "engine/judging/figures.hpp"

#include <optional>
#include <string>

namespace matula::judging {

/// "0.81 (0.74 to 0.88)", without brackets where there is no interval; "too few readings" for nothing.
[[nodiscard]] std::string in_words(const std::optional<WithInterval>& figure);

} // namespace matula::judging
