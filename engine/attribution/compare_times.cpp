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

double Comparison::recipe_rest_s() const {
  double rest_s = recipe_.last_wait_s;
  for (std::size_t r = recipe_.deeds.size(); r-- > 0 && !recipe_.deeds[r].is_anchor();) {
    rest_s += recipe_.deeds[r].seconds + recipe_.deeds[r].waited_s;
  }
  return rest_s;
}

void Comparison::times() {
  reading_time();
  const Deed* left = nullptr;
  double wait_s = 0;
  std::size_t number = 0;
  for (std::size_t r = 0; r < recipe_.deeds.size(); ++r) {
    const Deed& right = recipe_.deeds[r];
    wait_s += right.waited_s + (right.kind == Kind::Mix ? right.seconds : 0);
    if (!right.is_anchor()) {
      continue;
    }
    const Deed* here = answers_[r] ? &learner_[*answers_[r]] : nullptr;
    if (left != nullptr && here != nullptr) {
      between(*left, *here, wait_s, ++number);
    }
    left = here;
    wait_s = 0;
  }
}

void Comparison::reading_time() {
  static const std::vector<std::string> facts{"seconds_since_last_addition", "paper_age_s", "since_drop_s"};
  const Deed* last = nullptr;
  for (const auto& deed : learner_) {
    last = deed.is_anchor() && deed.read_vessel && deed.what != "blot" ? &deed : last;
  }
  if (last == nullptr) {
    return;
  }
  const double found_s = trail_.points.back().time_s - last->end_s;
  const double right_s = recipe_rest_s();
  constexpr double a_moment_s = 10;
  if (std::abs(found_s - right_s) < a_moment_s || !off(found_s, right_s, facts)) {
    return;
  }
  const auto words = fmt::format("read after {} instead of {}", say_time(found_s), say_time(right_s));
  note("time", words, facts).changes = stretch(work_, last->next_step, work_.steps.size(), right_s - found_s);
}

void Comparison::between(const Deed& left, const Deed& right, double wait_s, std::size_t number) {
  const double found_s = right.begin_s - left.end_s;
  const bool hurried = found_s * 2 < wait_s && wait_s >= method_.why.short_wait_s;
  const bool left_alone = found_s > wait_s * 2 + method_.why.long_wait_s;
  if ((hurried || left_alone) && left.next_step <= right.steps.front()) {
    note(fmt::format("wait.{}", number),
         hurried ? fmt::format("only {} between two steps instead of {}", say_time(std::max(0.0, found_s)),
                               say_time(wait_s))
                 : fmt::format("left standing {} between two steps", say_time(found_s)),
         {"stood_before_filter_s"})
        .changes = stretch(work_, left.next_step, right.steps.front(), wait_s - found_s);
  }
}

} // namespace matula::attribution
