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

void Comparison::others() {
  for (std::size_t r = 0; r < recipe_.deeds.size(); ++r) {
    const Deed& right = recipe_.deeds[r];
    if (right.kind != Kind::Other || right.what == "lay" || right.what == "filter") {
      continue;
    }
    if (!answers_[r]) {
      const std::string words = right.what == "blot"   ? "the edge was not drawn over tissue"
                                : right.what == "drop" ? "no " + name_of(right) + " was dropped on it"
                                                       : "left out: " + right.what;
      note(right.what, words, {"blotted", "drops_on_paper"}).changes = {insertion(r)};
      continue;
    }
    const Deed& found = learner_[*answers_[r]];
    const bool dip = right.what == "dip";
    if ((!dip && right.what != "drop") || !off(found.amount, right.amount, {"dip_s", "drops_on_paper"})) {
      continue;
    }
    auto& one =
        note(right.what,
             dip ? fmt::format("dipped {} instead of {}", say_time(found.amount), say_time(right.amount))
                 : fmt::format("{} drops instead of {}", say_number(found.amount), say_number(right.amount)),
             {dip ? "dip_s" : "drops_on_paper"});
    Change change;
    change.kind = Change::Kind::Scale;
    change.steps = found.steps;
    change.value = right.amount / std::max(found.amount, 0.01);
    one.changes = {change};
  }
}

} // namespace matula::attribution
