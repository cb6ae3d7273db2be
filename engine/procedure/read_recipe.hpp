#pragma once

#include "engine/procedure/recipe.hpp"
#include "engine/strict/table.hpp"

namespace matula::procedure {

/// The tables [recipe] and [ladder] of a procedure's file.
[[nodiscard]] Recipe read_recipe(const strict::Table& root, const std::string& test);

} // namespace matula::procedure
