#pragma once

#include "engine/learner/record.hpp"
#include "engine/learner/rules.hpp"

#include <span>
#include <string>
#include <vector>

namespace matula::learner {

/// One rule a learner has met.
struct RuleKept {
  std::string skill;
  std::string rule; ///< "temperature", "unlabelled"
  int met = 0;
  double half_life_days = 0;
  double recall = 0;      ///< Chance to recall it now.
  std::int64_t due_s = 0; ///< UTC, when it should be met again.
  bool due = false;
  double known = 0;  ///< Chance that it is known at all.
  bool held = false; ///< Known, as far as the answers tell.
};

/// Every rule the answers called for, the one most faded first. An unknown of a skill made of rules names
/// them in its second part: "corrections/zero+temperature/..." calls for two.
[[nodiscard]] std::vector<RuleKept> rules_kept(std::span<const Answer> answers, const Rules& rules,
                                               std::int64_t now_s);

} // namespace matula::learner
