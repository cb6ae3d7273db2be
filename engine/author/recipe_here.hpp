#pragma once

#include "engine/scoring/rulebook.hpp"

namespace matula::matter {
struct Catalogue;
}

namespace matula::author {

/// The recipe with the bottles of a bench: where the recipe's own is not out, another of the same test that
/// is, more or less of it by its strength. Water and salt solutions stay as they are.
[[nodiscard]] procedure::Recipe recipe_here(const scoring::TestRule& test, procedure::Recipe recipe,
                                            const std::vector<std::string>& out,
                                            const matter::Catalogue& catalogue);

/// Puts out what the recipe and the curve still lack; whether there was anything.
bool put_out(const procedure::Recipe& recipe, const std::optional<procedure::Curve>& curve,
             std::vector<std::string>& out);

/// The bottles a recipe takes, each once, in order.
[[nodiscard]] std::vector<std::string> bottles_of(const procedure::Recipe& recipe);

} // namespace matula::author
