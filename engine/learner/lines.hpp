#pragma once

#include "engine/learner/groups.hpp"

namespace matula::learner {

/// A figure with the interval that holds it in nine cases of ten.
struct Estimate {
  double value = 0;
  double low = 0;
  double high = 0;
};

/// Where a learner draws one line, in grades.
struct OwnLine {
  std::string below; ///< The words it parts.
  std::string above;
  double reference = 0; ///< Where the reference reader draws it.
  Estimate own;
  int near = 0;         ///< Readings that tell of it.
  double chance = 0;    ///< That it lies off by more than is no concern.
  std::string sentence; ///< Empty unless the readings carry it.
};

/// Where a learner draws the lines of one group of tests.
struct GroupLines {
  std::string key;
  std::string title;
  std::vector<std::string> words;
  int readings = 0;
  double spread = 0; ///< Of the learner's eye, in grades.
  std::optional<Estimate>
      shift; ///< Mean of the lines' distances from the reference; nothing for few readings.
  double shift_chance = 0;
  std::string sentence;       ///< About the shift; empty unless the readings carry it.
  std::vector<OwnLine> lines; ///< Empty for few readings.
};

/// One for each group; MAP ordinal probit (statistics::fit_boundaries) against the intensities the model
/// gave.
[[nodiscard]] std::vector<GroupLines> own_lines(const std::vector<Group>& groups, const Rules& rules);

} // namespace matula::learner
