#pragma once

#include "engine/procedure/procedure.hpp"
#include "sim/reading/reference_reader.hpp"

#include <array>

namespace matula::scoring {

/// How one graded test is weighed. Values come from assets/scoring/rules.toml.
struct OrdinalRule {
  int under_reading_percent = 100; ///< Loss factor for reading too low: 100 normal, 150 critical.
  reading::Grade reportable = reading::Grade::OnePlus; ///< First grade a doctor must hear of.
  double reader_spread = 0.25;                         ///< Standard deviation of a trained reader, in grades.
  std::size_t grades = reading::grade_count;           ///< Words to choose from; the usual six or more.
  std::array<int, reading::grade_count> loss{0,    200,  700,
                                             1000, 1000, 1000}; ///< Per mille, by distance; the last goes on.
  int missed_finding = 500; ///< Extra loss per mille: reportable read as negative.
  int false_alarm = 250;    ///< Extra loss per mille: negative read as reportable.
};

/// What a grade earns against one certain truth, 0..1000.
[[nodiscard]] int score_grade(reading::Grade truth, reading::Grade read, const OrdinalRule& rule);

/// Chances of each grade.
using Chances = std::array<double, procedure::most_words>;

/// Chances of the first `grades` grades for a tube of `intensity` as a trained reader with spread would name
/// it; they sum to 1, and the rest is 0.
[[nodiscard]] Chances grade_chances(double intensity, double reader_spread,
                                    std::size_t grades = reading::grade_count);

struct OrdinalResult {
  int per_mille = 0;           ///< The best possible answer for the tube earns 1000.
  bool missed_finding = false; ///< Read negative where at least 9 in 10 readers report.
  bool false_alarm = false;    ///< Reported where at least 9 in 10 readers see nothing.
  bool borderline = false;     ///< Two neighbouring grades both earn nearly full marks.
};

/// What a grade earns on a tube whose intensity is known: a tube on a line has no single truth.
[[nodiscard]] OrdinalResult score_intensity(double intensity, reading::Grade read, const OrdinalRule& rule);

} // namespace matula::scoring
