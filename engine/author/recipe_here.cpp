#include "engine/author/recipe_here.hpp"

#include "sim/matter/catalogue.hpp"

#include <algorithm>

namespace matula::author {

namespace {

bool has(const std::vector<std::string>& words, const std::string& word) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

/// Place of a bottle among those of the test; nothing for any other.
std::optional<std::size_t> place_of(const scoring::TestRule& test, const std::string& bottle) {
  const auto at = std::find(test.reagents.begin(), test.reagents.end(), bottle);
  return at == test.reagents.end() ? std::nullopt
                                   : std::optional(static_cast<std::size_t>(at - test.reagents.begin()));
}

/// "acetic_acid" of "acetic_acid_10": what bottles of one kind begin with.
std::string kind_of(const std::string& bottle) {
  const auto end = bottle.find_last_not_of("0123456789");
  return end != std::string::npos && end + 1 < bottle.size() && bottle[end] == '_' ? bottle.substr(0, end)
                                                                                   : bottle;
}

std::string other_bottle(const scoring::TestRule& test, const std::string& bottle,
                         const std::vector<std::string>& out) {
  for (const std::string& one : out) {
    if ((place_of(test, bottle) && place_of(test, one)) || kind_of(one) == kind_of(bottle)) {
      return one;
    }
  }
  return bottle;
}

void take_other(procedure::RecipeStep& step, const scoring::TestRule& test,
                const std::vector<std::string>& out) {
  const std::string other = other_bottle(test, step.reagent, out);
  const auto from = place_of(test, step.reagent);
  const auto to = place_of(test, other);
  if (from && to && test.strengths[*to] > 0) {
    step.volume_ml *= test.strengths[*from] / test.strengths[*to];
  }
  step.reagent = other;
}

} // namespace

procedure::Recipe recipe_here(const scoring::TestRule& test, procedure::Recipe recipe,
                              const std::vector<std::string>& out, const matter::Catalogue& catalogue) {
  for (auto& step : recipe.steps) {
    const bool dispensed = step.kind == procedure::StepKind::Dispense;
    if (dispensed && !has(out, step.reagent) && catalogue.find_reagent(step.reagent) != nullptr) {
      take_other(step, test, out);
    }
  }
  return recipe;
}

std::vector<std::string> bottles_of(const procedure::Recipe& recipe) {
  std::vector<std::string> bottles;
  const auto add = [&](const std::string& bottle) {
    if (!bottle.empty() && !has(bottles, bottle)) {
      bottles.push_back(bottle);
    }
  };
  for (const auto& step : recipe.steps) {
    add(step.kind == procedure::StepKind::Dispense ? step.reagent : "");
    for (const auto& action : step.acts) {
      if (const auto* dispense = std::get_if<bench::Dispense>(&action)) {
        add(dispense->reagent);
      } else if (const auto* drops = std::get_if<bench::DropOn>(&action)) {
        add(drops->reagent);
      }
    }
  }
  return bottles;
}

bool put_out(const procedure::Recipe& recipe, const std::optional<procedure::Curve>& curve,
             std::vector<std::string>& out) {
  auto wanted = bottles_of(recipe);
  if (curve) {
    wanted.insert(wanted.end(), curve->standards.begin(), curve->standards.end());
    wanted.push_back(curve->blank);
  }
  bool added = false;
  for (const auto& bottle : wanted) {
    if (!has(out, bottle)) {
      out.push_back(bottle);
      added = true;
    }
  }
  return added;
}

} // namespace matula::author
