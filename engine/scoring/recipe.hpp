#pragma once

#include "engine/scenario/problem.hpp"
#include "sim/bench/bench.hpp"

#include <tl/expected.hpp>

#include <filesystem>
#include <map>
#include <string>
#include <vector>

namespace matula::scoring {

enum class StepKind { Pour, Dispense, Mix, Heat, Boil, Wait };

/// One step of a test done by the book.
struct RecipeStep {
  StepKind kind = StepKind::Wait;
  std::string reagent;
  double volume_ml = 0;
  double seconds = 0;
  double limit_s = 0;   ///< Boil only: gives up after so long in the flame.
  double height = 0.85; ///< Where on the liquid the flame plays, 0..1.
  bench::Manner manner = bench::Manner::Swirl;
  std::string source;
};

struct Recipe {
  std::string test;
  bench::VesselName vessel;
  std::vector<RecipeStep> steps;
  std::string ladder_species;           ///< What a ladder of this test is made of,
  std::vector<double> ladder_mg_per_dl; ///< at these concentrations unless others are asked for.
};

/// Reads assets/recipes/TEST.toml under the assets folder.
[[nodiscard]] tl::expected<Recipe, scenario::Problems> load_recipe(const std::filesystem::path& assets_folder,
                                                                   const std::string& test);

} // namespace matula::scoring
