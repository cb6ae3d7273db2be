#pragma once

#include "engine/reception/day.hpp"

namespace matula::reception {

/// A wrong result a known slip leads to, and how to say it.
struct DaySlip {
  double value = 0;
  std::string words;
  double meant = 0; ///< What later lines go on from instead of the entry; 0 for the entry itself.
};

/// One number of the exercise on its way to a line.
struct DayNumber {
  std::string item;
  std::string label;
  std::string mark;
  double expected = 0; ///< From the learner's own lines.
  double tolerance = 0;
  std::string unit;
  std::string working; ///< "3.50 g/L x 1.2 L"
  std::vector<DaySlip> slips;
};

/// What the later lines go on from: the learner's own figure, or the expected one where none stands.
struct Worked {
  DayLine line;
  double own = 0;
};

/// A number as a learner writes it, with point or comma.
[[nodiscard]] std::optional<double> number_of(const std::string& text);
/// "1200", "4.2", "0.45"
[[nodiscard]] std::string say(double value);

[[nodiscard]] Worked judge_number(const DayNumber& number, const std::string& entered);

/// Words judged from own lines: whether it is complete, the band, the pattern.
struct OwnLines {
  double creatinine_index = 0;
  double protein_g = 0;
  double day_mg_per_h = 0;
  double night_mg_per_h = 0;
};
[[nodiscard]] DayLine judge_count(const DayRecord& day, std::size_t number, const Entries& entries);
[[nodiscard]] DayLine judge_complete(const DayRecord& day, const DayRules& rules, const OwnLines& own,
                                     const Entries& entries);
[[nodiscard]] DayLine judge_band(const DayRules& rules, const OwnLines& own, const Entries& entries);
[[nodiscard]] DayLine judge_pattern(const DayRules& rules, const OwnLines& own, const Entries& entries);

} // namespace matula::reception
