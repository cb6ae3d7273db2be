#include "engine/attribution/comparison.hpp"

#include "engine/attribution/gaps.hpp"
#include "engine/scoring/explain.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace matula::attribution {

using scoring::say_number;
using scoring::say_time;
using Kind = Deed::Kind;

void Comparison::volumes() {
  const bool together = all_in_proportion();
  for (const Deed* thing : things()) {
    const Total right = total_of(recipe_.deeds, *thing);
    const Total found = total_of(learner_, *thing);
    if (found.deeds.empty()) {
      missing(*thing, right);
      continue;
    }
    if (!together) {
      amount(*thing, found, right);
    }
    manner_of_pouring(*thing, found, right);
    wrong_bottle(*thing, found);
    dilution(*thing, found);
  }
}

bool Comparison::all_in_proportion() {
  double first = 0;
  std::vector<std::size_t> steps;
  std::size_t seen = 0;
  for (const Deed* thing : things()) {
    const Total right = total_of(recipe_.deeds, *thing);
    const Total found = total_of(learner_, *thing);
    const double ratio = found.amount / right.amount;
    first = seen == 0 ? ratio : first;
    if (!(ratio > 0) || apart(ratio, first) > std::log(method_.why.tight_ratio)) {
      return false;
    }
    ++seen;
    const auto more = steps_of(found);
    steps.insert(steps.end(), more.begin(), more.end());
  }
  if (seen < 2 || !off(first, 1, {"urine_ml", "reagent_ml"})) {
    return false;
  }
  auto& one = note("volume.all",
                   fmt::format("all volumes were {} of what the method asks for",
                               say_number(std::round(first * 100) / 100) + " times"),
                   {"urine_ml", "reagent_ml"});
  Change change;
  change.kind = Change::Kind::Scale;
  change.steps = steps;
  change.value = 1 / first;
  one.changes = {change};
  return true;
}

void Comparison::missing(const Deed& thing, const Total& right) {
  auto& one = note("missing." + thing.what, "no " + name_of(thing) + " was added", facts_of(thing));
  for (const auto* deed : right.deeds) {
    one.changes.push_back(insertion(static_cast<std::size_t>(deed - recipe_.deeds.data())));
  }
}

void Comparison::amount(const Deed& thing, const Total& found, const Total& right) {
  if (!off(found.amount, right.amount, facts_of(thing))) {
    return;
  }
  auto& one = note("volume." + thing.what,
                   fmt::format("{} mL of {} instead of {} mL", say_number(found.amount), name_of(thing),
                               say_number(right.amount)),
                   facts_of(thing));
  Change change;
  change.kind = Change::Kind::Scale;
  change.steps = steps_of(found);
  change.value = right.amount / found.amount;
  one.changes = {change};
}

void Comparison::manner_of_pouring(const Deed& thing, const Total& found, const Total& right) {
  if (!right.gently || found.gently) {
    return; // Gently poured where it need not be is mixed afterwards all the same.
  }
  auto& one = note("gently." + thing.what, "the " + name_of(thing) + " was not run gently down the wall",
                   {"poured_gently"});
  Change change;
  change.kind = Change::Kind::Gently;
  change.steps = steps_of(found);
  change.flag = true;
  one.changes = {change};
}

void Comparison::wrong_bottle(const Deed& thing, const Total& found) {
  if (thing.what != "reagent") {
    return;
  }
  Change change;
  change.kind = Change::Kind::Bottle;
  change.vessel = thing.bottle;
  double strength = 1;
  for (const auto* deed : found.deeds) {
    if (deed->bottle != thing.bottle) {
      change.steps.insert(change.steps.end(), deed->steps.begin(), deed->steps.end());
      const auto* dispense = std::get_if<bench::Dispense>(&work_.steps[deed->steps.front()].action);
      strength = dispense != nullptr ? deed->amount / dispense->volume_ml : 1;
    }
  }
  if (change.steps.empty()) {
    return;
  }
  change.value = strength;
  const Deed* used = found.deeds.front();
  auto& one =
      note("bottle." + thing.what, fmt::format("{} instead of {}", name_of(*used), name_of(thing)), {});
  one.changes = {change};
}

void Comparison::dilution(const Deed& thing, const Total& found) {
  Change change;
  change.kind = Change::Kind::Undiluted;
  for (const auto* deed : found.deeds) {
    if (deed->diluted) {
      change.steps.insert(change.steps.end(), deed->steps.begin(), deed->steps.end());
    }
  }
  if (thing.what == "specimen" && !change.steps.empty()) {
    note("diluted", "the specimen had been diluted with water", {"water_ml"}).changes = {change};
  }
}

void Comparison::extras() {
  std::vector<const Deed*> seen;
  for (const auto& deed : learner_) {
    const auto same = [&](const Deed* d) { return d->same_as(deed); };
    const auto all = things();
    if (deed.kind != Kind::Add || !deed.read_vessel || std::any_of(all.begin(), all.end(), same) ||
        std::any_of(seen.begin(), seen.end(), same)) {
      continue;
    }
    seen.push_back(&deed);
    const Total found = total_of(learner_, deed);
    auto& one = note(
        "extra." + deed.what,
        fmt::format("{} mL of {} that does not belong in this test", say_number(found.amount), name_of(deed)),
        {"water_ml"});
    Change change;
    change.steps = steps_of(found);
    one.changes = {change};
  }
}

} // namespace matula::attribution
