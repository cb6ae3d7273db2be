#pragma once

namespace matula::statistics {

/// Chance to recall a rule so long after it was last met: halved with every half-life. B. Settles and B.
/// Meeder, Proc. 54th Ann. Meeting Assoc. Comput. Linguistics (2016) 1848. Time before the meeting counts as
/// none.
[[nodiscard]] double recall_chance(double half_life, double elapsed);

/// How long after a meeting the chance will have fallen to `wanted` (above 0, at most 1): 0.152 half-lives
/// for 0.9, 0.322 for 0.8.
[[nodiscard]] double next_review(double half_life, double wanted);

/// How meeting a rule changes its half-life: proposals of this program, not published values.
struct MemoryRule {
  double first_days = 1; ///< Half-life before the first meeting.
  double grows = 2;      ///< Times, when recalled,
  double falls = 0.5;    ///< when not,
  double least_days = 0.25;
};

/// Half-life after one more meeting.
[[nodiscard]] double half_life_after(double half_life_days, bool recalled, const MemoryRule& rule = {});

/// Of a rule that is either known or not: A.T. Corbett and J.R. Anderson, User Model. User-Adapt. Interact. 4
/// (1995) 253. The figures are proposals of this program.
struct KnowledgeRule {
  double first = 0.3;   ///< Chance to know it beforehand,
  double learns = 0.15; ///< to come to know it at a meeting,
  double slips = 0.1;   ///< to fail although it is known,
  double guesses = 0.2; ///< to succeed although it is not.
};

/// Chance that the rule is known after one more answer.
[[nodiscard]] double known_after(double known, bool right, const KnowledgeRule& rule);

} // namespace matula::statistics
