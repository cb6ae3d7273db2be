#pragma once

#include "engine/reception/book.hpp"
#include "engine/reception/delivery.hpp"

#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace matula::reception {

/// Whether a void belongs to the day: after the start, up to and with the end.
[[nodiscard]] bool counts(const DayRecord& day, const Void& one);

/// What stands in a bottle, mixed, as the laboratory measured it (to 0.01 g/L).
struct Bottle {
  std::string key; ///< "whole", "day" or "night".
  double volume_ml = 0;
  double protein_g_per_l = 0;
  double creatinine_g_per_l = 0;
  double hours = 0; ///< Over which it was passed.
};

/// The bottles filled, "whole" alone or "day" and "night".
[[nodiscard]] std::vector<Bottle> bottles_of(const DayRecord& day);

/// What was passed between start and end, and what is in the bottles instead.
struct Balance {
  double true_ml = 0;
  double bottle_ml = 0;
  double true_protein_g = 0;
  double bottle_protein_g = 0;

  [[nodiscard]] double volume_error() const;  ///< As a share: 0.2 is a fifth too much.
  [[nodiscard]] double protein_error() const; ///< The same; 0 when there is no protein.
};
[[nodiscard]] Balance balance_of(const DayRecord& day);

/// Grams in so many millilitres.
[[nodiscard]] double grams(double g_per_l, double volume_ml);
/// Creatinine of a day for each kilogram, mg/kg.
[[nodiscard]] double creatinine_index(double creatinine_g, double weight_kg);

/// A number or word of the exercise, judged from the learner's own lines before it.
struct DayLine {
  std::string item; ///< "day.volume_ml", "day.counts.2", "day.band"
  std::string label;
  std::string mark; ///< Which of the book's marks it earns.
  bool arithmetic = false;
  std::string entered;
  std::string expected;
  bool right = false;
  std::string reason; ///< Empty when right.
  std::string unit;   ///< Of a number; empty for words.
};

/// What the learner wrote for an item; empty when nothing.
using Entries = std::function<std::string(const std::string& item)>;

/// Every item of the exercise in the order in which they are worked.
[[nodiscard]] std::vector<std::string> day_items(const DayRecord& day);

/// Judges the whole exercise.
[[nodiscard]] std::vector<DayLine> mark_day(const DayRecord& day, const DayRules& rules,
                                            const Entries& entries);

/// Bands of so much protein: two where books disagree, or on a line.
[[nodiscard]] std::vector<std::string> bands_of(double protein_g, const DayRules& rules);

/// "none", "postural" or "constant", from the protein of day and night.
[[nodiscard]] std::string pattern_of(double day_mg_per_h, double night_mg_per_h, const DayRules& rules);

} // namespace matula::reception
