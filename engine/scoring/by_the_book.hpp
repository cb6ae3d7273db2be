#pragma once

#include "engine/procedure/recipe.hpp"
#include "sim/bench/bench.hpp"

#include <string>

namespace matula::scoring {

/// A bench on which one test has been done by the book.
struct BookTube {
  bench::State state;
  bench::VesselName vessel;
  std::string stopped_because; ///< The bench's own words when a step was refused; empty when all were done.
};

using procedure::Recipe;
using procedure::RecipeStep;
using procedure::StepKind;

/// Does the recipe on a fresh bench of `setup`, with gloves and goggles on.
[[nodiscard]] BookTube do_by_the_book(const bench::Setup& setup, const Recipe& recipe);

} // namespace matula::scoring
