#pragma once

#include <array>
#include <string>
#include <vector>

namespace matula::quality {

/// The usual rules for numbers: J.O. Westgard et al., Clin. Chem. 27 (1981) 493, from memory.
enum class Rule { OneTwoS, OneThreeS, TwoTwoS, RangeFourS, FourOneS, TenX };
inline constexpr std::array<Rule, 6> all_rules{Rule::OneTwoS,    Rule::OneThreeS, Rule::TwoTwoS,
                                               Rule::RangeFourS, Rule::FourOneS,  Rule::TenX};

/// R-4s is printed in two ways, and they do not reject the same runs.
enum class RangeWording {
  EitherSide, ///< One control above + 2 s and another below - 2 s in the same run.
  Spread      ///< The controls of a run lie more than 4 s apart.
};

/// Values of one run as z = (value - mean)/s, one for each control material, always in the same order.
using Run = std::vector<double>;

/// "1-2s" and so on, as laboratories write it.
[[nodiscard]] std::string to_word(Rule rule);
[[nodiscard]] std::string meaning(Rule rule); ///< In a sentence for the learner.
[[nodiscard]] bool rejects(Rule rule);        ///< 1-2s only warns.

/// Whether the last run breaks the rule, with the runs before it; false for no runs. Rules of several values
/// look along one material over runs and, within the same runs, across the materials.
[[nodiscard]] bool breaks(Rule rule, const std::vector<Run>& runs,
                          RangeWording wording = RangeWording::EitherSide);

/// Every rule the last run breaks.
[[nodiscard]] std::vector<Rule> broken_rules(const std::vector<Run>& runs,
                                             RangeWording wording = RangeWording::EitherSide);

/// Mean and deviation (n - 1) of a control in the settling-in period. Throws std::invalid_argument for fewer
/// than two values.
struct Baseline {
  double mean = 0;
  double deviation = 1;
};
[[nodiscard]] Baseline baseline(const std::vector<double>& values);

} // namespace matula::quality
