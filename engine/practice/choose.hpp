#pragma once

#include "engine/learner/record.hpp"
#include "engine/practice/unknown.hpp"
#include "engine/statistics/ability.hpp"

#include <cstdint>
#include <span>
#include <vector>

namespace matula::practice {

struct Store;

/// A learner's ability at one skill, from every answer of drills and quizzes to it.
[[nodiscard]] statistics::Ability ability_of(std::span<const learner::Answer> answers, Skill skill,
                                             int right_from);

/// What to put before the learner next. Of several skills never the same twice running: the one whose rules
/// have faded most, else the one met longest ago. As hard as the learner gets right three times in four;
/// within a skill tests, grades and rules alternate, and no unknown of the last dozen comes again. `answers`
/// are all of the learner, oldest first; `seed` one of this moment. The same arguments give the same unknown.
[[nodiscard]] Unknown next_unknown(const Store& store, std::span<const learner::Answer> answers,
                                   const std::vector<Skill>& skills, std::int64_t now_s, std::uint64_t seed);

/// An unknown of a skill at random: of any test, rule and hardness.
[[nodiscard]] Unknown random_unknown(const Store& store, Skill skill, std::uint64_t seed);

/// A tube of a test so far (grades) from the nearest line, within a grade and the test's reach.
[[nodiscard]] Unknown tube_at(const Store& store, const std::string& test, const std::string& urine,
                              std::size_t grade, double from_line, std::uint64_t seed);

/// A float that stands so far (divisions) from half way between two marks.
[[nodiscard]] Unknown float_at(const Store& store, const std::string& water, double from_half,
                               std::uint64_t seed);

} // namespace matula::practice
