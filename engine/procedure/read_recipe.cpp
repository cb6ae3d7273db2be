#include "engine/procedure/read_recipe.hpp"

#include <algorithm>

namespace matula::procedure {

namespace {

using strict::Table;

const std::vector<std::string> kind_names{"pour", "dispense", "mix", "heat", "boil", "bath", "wait", "act"};
const strict::Range seconds_range{0, 100000, "s"};
const strict::Range volume_range{0.01, 50, "mL"};

StepKind read_kind(const Table& t) {
  const auto word = t.word("do", kind_names);
  return static_cast<StepKind>(std::find(kind_names.begin(), kind_names.end(), word) - kind_names.begin());
}

void read_amount(const Table& t, RecipeStep& step) {
  step.volume_ml = t.number("volume_ml", volume_range);
  step.gently = t.boolean_or("gently", false);
  if (step.kind == StepKind::Dispense) {
    step.reagent = t.text("reagent");
  } else {
    step.from = t.text_or("from", step.from);
  }
}

RecipeStep read_step(const Table& t, const std::string& vessel) {
  RecipeStep step;
  step.kind = read_kind(t);
  step.source = t.text("source");
  step.to = t.text_or("to", vessel);
  switch (step.kind) {
  case StepKind::Act:
    step.act = t.text("act");
    return step;
  case StepKind::Pour:
  case StepKind::Dispense:
    read_amount(t, step);
    return step;
  case StepKind::Mix:
    step.manner =
        t.word("manner", {"swirl", "invert"}) == "swirl" ? bench::Manner::Swirl : bench::Manner::Invert;
    break;
  case StepKind::Bath:
    step.temperature_c = t.number("temperature_c", {0, 100, "°C"});
    break;
  case StepKind::Boil:
    step.limit_s = t.number("limit_s", seconds_range);
    step.height = t.number("height", {0, 1, ""});
    break;
  case StepKind::Heat:
    step.height = t.number("height", {0, 1, ""});
    break;
  case StepKind::Wait:
    break;
  }
  step.seconds = t.number("seconds", seconds_range);
  return step;
}

} // namespace

Recipe read_recipe(const Table& root, const std::string& test) {
  Recipe recipe;
  recipe.test = test;
  const Table table = root.table("recipe");
  recipe.vessel = table.text("vessel");
  for (const auto& row : table.tables("step")) {
    recipe.steps.push_back(read_step(row, recipe.vessel));
  }
  if (const auto ladder = root.table_if_any("ladder")) {
    if (ladder->has("ph")) {
      recipe.ladder_species = of_ph;
      recipe.ladder_mg_per_dl = ladder->numbers("ph", {4, 10, "pH"});
    } else {
      recipe.ladder_species = ladder->text("species");
      recipe.ladder_mg_per_dl = ladder->numbers("mg_per_dl", {0, 20000, "mg/dL"});
    }
  }
  return recipe;
}

} // namespace matula::procedure
