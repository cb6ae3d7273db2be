#pragma once

#include "engine/learner/record.hpp"
#include "engine/practice/rules.hpp"

#include <cstdint>
#include <map>
#include <span>
#include <string>

namespace matula::practice {

/// How well one rule is remembered.
struct Remembered {
  double half_life_days = 1;
  std::int64_t last_s = 0; ///< UTC.
  int met = 0;

  /// Chance to recall it now.
  [[nodiscard]] double recall(std::int64_t now_s) const;
  /// When the chance will have fallen to `chance`.
  [[nodiscard]] std::int64_t due_s(double chance) const;
};

/// Every rule the answers have called for, by the name facts_of gives it.
[[nodiscard]] std::map<std::string, Remembered> remembered(std::span<const learner::Answer> answers,
                                                           const MemoryRules& rules, int right_from);

} // namespace matula::practice
