#pragma once

#include "engine/window/app.hpp"

#include <filesystem>
#include <vector>

namespace matula::window {

/// The cases of a folder as the start screen lists them: the one to begin with first, then by level, and by
/// file name within a level. A file that cannot be read is listed with what is wrong with it.
[[nodiscard]] std::vector<Offer> list_cases(const desk::Ground& ground, const std::filesystem::path& folder);

} // namespace matula::window
