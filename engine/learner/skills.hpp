#pragma once

#include "engine/learner/record.hpp"
#include "engine/learner/rules.hpp"
#include "engine/scoring/rulebook.hpp"
#include "engine/statistics/ability.hpp"

#include <span>
#include <string>
#include <vector>

namespace matula::learner {

/// How readings of graded tests went.
struct GradedFigures {
  int readings = 0;
  double exact = 0;         ///< Share on the word the tube shows,
  double within_one = 0;    ///< on it or on a neighbour.
  int missed = 0;           ///< Findings a doctor must hear of, read negative.
  double mean = 0;          ///< Credit per mille.
  std::string constant;     ///< The word that, written for every tube, would have earned most,
  double constant_mean = 0; ///< and what it would have earned: tolerance alone gives so much.
  double skill =
      0; ///< (mean - constant_mean) / (1000 - constant_mean): 0 no better than that word, 1 perfect.
};

/// Whether the last answers differ from those before them.
struct Trend {
  double change = 0; ///< Of ability.
  double sd = 0;     ///< 0 for too few answers.
  std::string sentence;
};

/// One skill.
struct SkillProgress {
  std::string skill;
  int answers = 0; ///< In drills and quizzes,
  int right = 0;   ///< and how many of them right.
  statistics::Ability ability;
  double chance = 0.5; ///< To get a middling unknown right.
  bool mastered = false;
  std::optional<GradedFigures> graded; ///< From every reading, sittings too.
  Trend trend;
  std::int64_t last_s = 0; ///< UTC, of the last answer.
};

/// Every skill of the answers, in the order of their names. Only the latest answers of each count.
[[nodiscard]] std::vector<SkillProgress>
skills_of(std::span<const Answer> answers, const std::vector<scoring::TestRule>& tests, const Rules& rules);

} // namespace matula::learner
