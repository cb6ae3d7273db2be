#include "engine/examination/time_taken.hpp"

#include <algorithm>

namespace matula::examination {

namespace {

/// All sittings of one learner.
struct Span {
  std::vector<Returned*> sittings;
  std::int64_t begun_at_s = 0;
  std::int64_t ended_at_s = 0;
};

std::map<std::string, Span> by_learner(std::vector<Returned>& sittings) {
  std::map<std::string, Span> all;
  for (Returned& one : sittings) {
    if (one.begun_at_s == 0) {
      continue; // Its chain tells nothing.
    }
    Span& span = all[one.pseudonym];
    const bool first = span.sittings.empty();
    span.begun_at_s = first ? one.begun_at_s : std::min(span.begun_at_s, one.begun_at_s);
    span.ended_at_s = first ? one.ended_at_s : std::max(span.ended_at_s, one.ended_at_s);
    span.sittings.push_back(&one);
  }
  return all;
}

bool told_already(const Returned& one) {
  return std::any_of(one.checks.begin(), one.checks.end(), [](const Check& check) {
    return check.what == "time" && check.state == Check::State::ToBeReviewed;
  });
}

} // namespace

Check check_time(std::int64_t begun_at_s, std::int64_t ended_at_s, const Pack& pack, const std::string& who) {
  constexpr std::int64_t s_a_minute = 60;
  constexpr std::int64_t grace_s = 120; // Handing in takes a moment: fitted here.
  const std::int64_t took_s = ended_at_s - begun_at_s;
  const bool fits = took_s >= 0 && took_s <= pack.head.minutes * s_a_minute + grace_s;
  return {"time", fits ? Check::State::Good : Check::State::ToBeReviewed,
          who + " " + std::to_string(took_s / s_a_minute) + " of " + std::to_string(pack.head.minutes) +
              " minutes by the learner's own clock"};
}

void tell_time_of_all(std::vector<Returned>& sittings, const Pack& pack) {
  for (auto& [pseudonym, span] : by_learner(sittings)) {
    if (span.sittings.size() < 2) {
      continue;
    }
    const Check all = check_time(span.begun_at_s, span.ended_at_s, pack,
                                 std::to_string(span.sittings.size()) + " sittings together took");
    for (Returned* one : span.sittings) {
      if (all.state == Check::State::ToBeReviewed && !told_already(*one)) {
        one->checks.push_back(all);
      }
    }
  }
}

} // namespace matula::examination
