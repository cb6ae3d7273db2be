#pragma once

#include "engine/procedure/recipe.hpp"
#include "sim/bench/bench.hpp"

#include <functional>
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

/// Does one step of a recipe on a bench as it stands; the bench's own words when it is refused, empty when it
/// was done. A flame is put out afterwards.
[[nodiscard]] std::string do_step(bench::State& state, const bench::Setup& setup, const RecipeStep& step);

/// Asked between the steps; true gives the work up.
using GiveUp = std::function<bool()>;

/// Does the recipe on a fresh bench of `setup`, with gloves and goggles on.
[[nodiscard]] BookTube do_by_the_book(const bench::Setup& setup, const Recipe& recipe);

/// The same on a bench that has just begun, and was made once for many; "given up" in `stopped_because` when
/// it was.
[[nodiscard]] BookTube do_by_the_book(const bench::Setup& setup, const bench::State& fresh,
                                      const Recipe& recipe, const GiveUp& give_up = {});

} // namespace matula::scoring
