#pragma once

#include <string>
#include <vector>

namespace matula::quality {

/// What a graded control says.
enum class Verdict {
  Good,    ///< On the target.
  Warning, ///< One grade off, on the same side of negative.
  Reject   ///< Further off, negative taken for positive or the other way, or off to one side twice running.
};

/// Judges the last reading of a control by its grade, 0 negative, 1 trace, 2 for 1+ and so on (common
/// practice). Any grade above 0 is positive. Good for no readings.
[[nodiscard]] Verdict judge_grades(int target, const std::vector<int>& readings);

/// Why, in words for the learner.
[[nodiscard]] std::string explain_grades(int target, const std::vector<int>& readings);

} // namespace matula::quality
