#pragma once

#include "engine/practice/rules.hpp"
#include "engine/practice/sum.hpp"
#include "engine/scoring/ordinal.hpp"

#include <string>

namespace matula::practice {

/// How hard an unknown is, in logits on the scale of abilities (statistics::Answer). All formulas are
/// proposals of this program; the constants stand in assets/practice/rules.toml.

/// Grades to the nearest line that a right answer must not cross: on a line both words beside it are right,
/// and the lines that count are the next ones.
[[nodiscard]] double distance_to_line(double intensity, const scoring::OrdinalRule& rule, int right_from);

/// Distance, in divisions of the scale, to the nearest half way between two marks that both a right reader
/// and the tolerance keep apart; 0..1.
[[nodiscard]] double distance_to_half(double reading, double division, double full);

/// ln(line_at / distance).
[[nodiscard]] double difficulty_at(double distance, const DifficultyRules& rules);

/// The distance at which an unknown is as hard as that.
[[nodiscard]] double distance_for(double difficulty, const DifficultyRules& rules);

[[nodiscard]] double sum_difficulty(const Sum& sum, const DifficultyRules& rules);
/// As far as the set of steps tells, before the figures are drawn.
[[nodiscard]] double step_set_difficulty(const std::string& what, const DifficultyRules& rules);

/// `fault` as in Unknown::what; `verdict` "accept", "qualify" or "refuse".
[[nodiscard]] double delivery_difficulty(const std::string& fault, const std::string& verdict,
                                         const DifficultyRules& rules);

} // namespace matula::practice
