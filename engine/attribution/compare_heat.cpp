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

std::string Comparison::say_heats(const Deed& found, const Deed& right, bool by_boiling) {
  if (found.in_bath != right.in_bath) {
    return say_heat(found, false) + " instead of " + say_heat(right, by_boiling);
  }
  constexpr double same_k = 1;
  if (right.in_bath && std::abs(found.bath_c - right.bath_c) > same_k) {
    return say_heat(found, false) + " instead of " + say_heat(right, false);
  }
  return say_heat(found, by_boiling) + " instead of " + say_time(right.seconds);
}

std::string Comparison::say_heat(const Deed& deed, bool by_boiling) {
  if (deed.in_bath) {
    return fmt::format("{} in the bath at {} °C", say_time(deed.seconds), say_number(deed.bath_c));
  }
  return by_boiling ? say_time(deed.boiled_s) + " at the boil" : say_time(deed.seconds) + " in the flame";
}

void Comparison::heating() {
  static const std::vector<std::string> facts{"seconds_above_90c", "seconds_above_90c_with_urine",
                                              "boiling_s",         "heated_s",
                                              "hot_after_acid_s",  "hottest_c",
                                              "in_bath_s",         "boil_over_ml"};
  std::size_t number = 0;
  for (std::size_t r = 0; r < recipe_.deeds.size(); ++r) {
    const Deed& right = recipe_.deeds[r];
    if (right.kind != Kind::Hot) {
      continue;
    }
    const std::string key = fmt::format("heat.{}", ++number);
    const bool by_boiling = right.boiled_s > 0;
    if (!answers_[r]) {
      note(key, "not heated (" + say_heat(right, by_boiling) + ")", facts).changes = {insertion(r)};
      continue;
    }
    const Deed& found = learner_[*answers_[r]];
    const bool elsewhere = found.in_bath != right.in_bath;
    const bool time_off =
        by_boiling ? off(found.boiled_s, right.boiled_s, facts) : off(found.seconds, right.seconds, facts);
    const bool bath_off = right.in_bath && std::abs(found.bath_c - right.bath_c) > method_.why.cold_k;
    if (!elsewhere && !time_off && !bath_off) {
      continue;
    }
    auto& one = note(key, say_heats(found, right, by_boiling), facts);
    Change change;
    change.kind = Change::Kind::Replace;
    change.steps = found.steps;
    change.recipe = right.recipe;
    one.changes = {change};
  }
  for (std::size_t j = 0; j < learner_.size(); ++j) {
    const Deed& deed = learner_[j];
    constexpr double a_moment_s = 5;
    if (deed.kind == Kind::Hot && !answered(j) && deed.urine_inside && deed.seconds > a_moment_s) {
      Change change;
      change.steps = deed.steps;
      note(fmt::format("heat.extra.{}", j), say_heat(deed, false) + ", which the method does not ask for",
           facts)
          .changes = {change};
    }
  }
}

} // namespace matula::attribution
