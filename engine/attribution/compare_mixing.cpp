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

void Comparison::mixing() {
  static const std::vector<std::string> facts{"mixed_after_last_addition"};
  std::size_t number = 0;
  for (std::size_t r = 0; r < recipe_.deeds.size(); ++r) {
    const Deed& right = recipe_.deeds[r];
    if (right.kind != Kind::Mix) {
      continue;
    }
    const std::string key = fmt::format("mix.{}", ++number);
    if (!answers_[r]) {
      note(key, mixing_left_out(r), facts).changes = {insertion(r)};
      continue;
    }
    const Deed& found = learner_[*answers_[r]];
    const bool short_of = found.seconds * method_.why.mixed_ratio < right.seconds;
    if (!short_of && found.manner == right.manner) {
      continue;
    }
    const char* how = found.manner == right.manner           ? "mixed"
                      : found.manner == bench::Manner::Swirl ? "swirled"
                                                             : "turned over";
    auto& one = note(key,
                     fmt::format("{} {} instead of {}{}", how, say_time(found.seconds),
                                 found.manner == right.manner ? "" : "turned over ", say_time(right.seconds)),
                     facts);
    Change change;
    change.kind = Change::Kind::Replace;
    change.steps = found.steps;
    change.recipe = right.recipe;
    one.changes = {change};
  }
  for (std::size_t j = 0; j < learner_.size(); ++j) {
    if (learner_[j].kind == Kind::Mix && learner_[j].read_vessel && !answered(j) && !mixed_there(j)) {
      Change change;
      change.steps = learner_[j].steps;
      note(fmt::format("mix.extra.{}", j), mixing_too_much(), facts).changes = {change};
    }
  }
}

std::string Comparison::mixing_left_out(std::size_t r) const {
  const bool anchor_follows = std::any_of(recipe_.deeds.begin() + static_cast<std::ptrdiff_t>(r),
                                          recipe_.deeds.end(), [](const Deed& d) { return d.is_anchor(); });
  if (!anchor_follows && recipe_.deeds[r].waited_s > long_wait_s) {
    return "not turned over again before reading";
  }
  for (std::size_t i = r; i-- > 0;) {
    if (recipe_.deeds[i].kind == Kind::Add) {
      return "not mixed after the " + name_of(recipe_.deeds[i]);
    }
  }
  return "not mixed";
}

std::string Comparison::mixing_too_much() const {
  const bool layers =
      std::any_of(recipe_.deeds.begin(), recipe_.deeds.end(), [](const Deed& d) { return d.gently; });
  return layers ? "shaken, where one liquid must lie on the other"
                : "mixed, where the method leaves the tube at rest";
}

bool Comparison::mixed_there(std::size_t j) const {
  std::size_t from = 0;
  std::size_t to = recipe_.deeds.size();
  for (std::size_t r = 0; r < recipe_.deeds.size(); ++r) {
    if (!answers_[r] || !recipe_.deeds[r].is_anchor()) {
      continue;
    }
    if (*answers_[r] < j) {
      from = r + 1;
    } else {
      to = std::min(to, r);
    }
  }
  return std::any_of(recipe_.deeds.begin() + static_cast<std::ptrdiff_t>(from),
                     recipe_.deeds.begin() + static_cast<std::ptrdiff_t>(std::max(from, to)),
                     [](const Deed& d) { return d.kind == Kind::Mix; });
}

} // namespace matula::attribution
