#pragma once

#include "sim/appearance/appearance.hpp"
#include "sim/reading/grade.hpp"
#include "sim/reading/scale.hpp"
#include "sim/reading/thresholds.hpp"

#include <string>

namespace matula::reading {

/// The same tube against the three cards. The reader is given looks only, never a concentration.
struct Looks {
  const appearance::Appearance* white = nullptr;
  const appearance::Appearance* black = nullptr;
  const appearance::Appearance* printed = nullptr;
};

/// A grade with the continuous intensity behind it: 0.5 is the negative/trace line, 4.5 the 3+/4+ line.
struct GradeReading {
  Grade grade = Grade::Negative;
  double intensity = 0;
  std::string seen; ///< What was seen, in the trade's words.
};

/// Grades a tube from its looks. An empty tube reads negative and says so.
[[nodiscard]] GradeReading read_grade(const Scale& scale, const Looks& looks, const Thresholds& thresholds);

/// Word for the specimen's colour on the white card: the nearest named colour by CIEDE2000.
[[nodiscard]] std::string read_colour(const appearance::Appearance& white, const Thresholds& thresholds);

/// "clear", "hazy", "cloudy" or "turbid", from print seen through the specimen.
[[nodiscard]] std::string read_clarity(const appearance::Appearance& printed, const Thresholds& thresholds);

} // namespace matula::reading
