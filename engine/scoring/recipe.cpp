#include "engine/scoring/recipe.hpp"

#include "engine/strict/table.hpp"

#include <algorithm>

namespace matula::scoring {
namespace {

using strict::Table;

const std::vector<std::string> kind_names{"pour", "dispense", "mix", "heat", "boil", "wait"};
const strict::Range seconds_range{0, 7200, "s"};
const strict::Range volume_range{0.01, 20, "mL"};

StepKind read_kind(const Table& t) {
  const auto word = t.word("do", kind_names);
  return static_cast<StepKind>(std::find(kind_names.begin(), kind_names.end(), word) - kind_names.begin());
}

RecipeStep read_step(const Table& t) {
  RecipeStep step;
  step.kind = read_kind(t);
  step.source = t.text("source");
  const bool measured = step.kind == StepKind::Pour || step.kind == StepKind::Dispense;
  if (measured) {
    step.volume_ml = t.number("volume_ml", volume_range);
  } else {
    step.seconds = t.number("seconds", seconds_range);
  }
  if (step.kind == StepKind::Dispense) {
    step.reagent = t.text("reagent");
  }
  if (step.kind == StepKind::Mix) {
    step.manner =
        t.word("manner", {"swirl", "invert"}) == "swirl" ? bench::Manner::Swirl : bench::Manner::Invert;
  }
  if (step.kind == StepKind::Boil) {
    step.limit_s = t.number("limit_s", seconds_range);
  }
  if (step.kind == StepKind::Boil || step.kind == StepKind::Heat) {
    step.height = t.number("height", {0, 1, ""});
  }
  return step;
}

} // namespace

tl::expected<Recipe, scenario::Problems> load_recipe(const std::filesystem::path& assets_folder,
                                                     const std::string& test) {
  strict::File file(assets_folder / "recipes" / (test + ".toml"));
  const Table root = file.root();
  Recipe recipe;
  recipe.test = root.word("test", {test});
  recipe.vessel = root.text("vessel");
  recipe.ladder_species = root.text("ladder_species");
  recipe.ladder_mg_per_dl = root.numbers("ladder_mg_per_dl", {0, 20000, "mg/dL"});
  for (const auto& row : root.tables("step")) {
    recipe.steps.push_back(read_step(row));
  }
  auto problems = file.finish();
  if (!problems.empty()) {
    return tl::make_unexpected(std::move(problems));
  }
  return recipe;
}

} // namespace matula::scoring
