#pragma once

#include "engine/learner/confusion.hpp"
#include "engine/learner/lines.hpp"
#include "engine/learner/memory.hpp"
#include "engine/learner/skills.hpp"

namespace matula::learner {

/// All that a learner's record tells, as plain figures and sentences.
struct Progress {
  std::vector<SkillProgress> skills;
  std::vector<RuleKept> rules;
  std::vector<GroupLines> lines;
  std::vector<Swap> swaps;
  std::vector<std::string> tomorrow; ///< What to change: the few things that cost most marks, dearest first.
};

/// Pure: the same answers, tests, rules and moment give the same progress.
[[nodiscard]] Progress progress_of(std::span<const Answer> answers,
                                   const std::vector<scoring::TestRule>& tests, const Rules& rules,
                                   std::int64_t now_s);

} // namespace matula::learner
