#include "engine/practice/memory.hpp"

#include "engine/practice/unknown.hpp"

#include <algorithm>
#include <cmath>

namespace matula::practice {

namespace {
constexpr double day_s = 86400;
}

double Remembered::recall(std::int64_t now_s) const {
  const double days = static_cast<double>(std::max<std::int64_t>(now_s - last_s, 0)) / day_s;
  return std::exp2(-days / half_life_days);
}

std::int64_t Remembered::due_s(double chance) const {
  return last_s + static_cast<std::int64_t>(std::llround(-half_life_days * std::log2(chance) * day_s));
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
      one.half_life_days *= answer.credit >= right_from ? rules.grows : rules.falls;
      one.half_life_days = std::max(one.half_life_days, rules.least_days);
      one.last_s = answer.when_s;
      ++one.met;
    }
  }
  return all;
}

} // namespace matula::practice
