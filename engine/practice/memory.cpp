#include "engine/practice/memory.hpp"

#include "engine/practice/unknown.hpp"
#include "engine/statistics/memory.hpp"

#include <algorithm>
#include <cmath>

namespace matula::practice {

namespace {
constexpr double day_s = 86400;
}

double Remembered::recall(std::int64_t now_s) const {
  return statistics::recall_chance(half_life_days, static_cast<double>(now_s - last_s) / day_s);
}

std::int64_t Remembered::due_s(double chance) const {
  return last_s + std::llround(statistics::next_review(half_life_days, chance) * day_s);
}

std::map<std::string, Remembered> remembered(std::span<const learner::Answer> answers,
                                             const MemoryRules& rules, int right_from) {
  std::map<std::string, Remembered> all;
  for (const auto& answer : answers) {
    const auto unknown = unknown_from_text(answer.unknown);
    if (!unknown) {
      continue;
    }
    for (const std::string& fact : facts_of(*unknown)) {
      auto& one = all[fact];
      if (one.met == 0) {
        one.half_life_days = rules.first_days;
      }
      const statistics::MemoryRule rule{rules.first_days, rules.grows, rules.falls, rules.least_days};
      one.half_life_days = statistics::half_life_after(one.half_life_days, answer.credit >= right_from, rule);
      one.last_s = answer.when_s;
      ++one.met;
    }
  }
  return all;
}

} // namespace matula::practice
