#pragma once

#include <optional>
#include <string>
#include <vector>

namespace matula::reception {

/// One void of a timed collection, as the patient's sheet has it.
struct Void {
  int at_min = 0; ///< Minutes after midnight before the first day, so that "07:00 day 2" is 1860.
  double volume_ml = 0;
  bool kept = true;             ///< Poured into a bottle.
  std::string bottle = "whole"; ///< "whole", or "day" and "night" where two bottles are compared.
  double protein_g_per_l = 0;
  double creatinine_g_per_l = 0;
};

/// A collection of 24 hours.
struct DayRecord {
  int start_min = 0; ///< The bladder is emptied and this void thrown away.
  int stop_min = 0;  ///< The last void that belongs to the day.
  double weight_kg = 70;
  std::string sex = "female"; ///< "male" or "female".
  std::vector<Void> voids;    ///< In the order of time.
  /// Item of the worksheet whose figure is the bottle's protein, "turbidity.value"; empty when a colleague
  /// has measured it and it stands on the sheet.
  std::string protein_item;
  std::string protein_unit = "g/L";   ///< Of that figure,
  double protein_g_per_l_of_unit = 1; ///< and what one of it is in g/L.

  /// Whether day and night were kept apart.
  [[nodiscard]] bool pair() const;
};

/// What came over the counter: the request form, the label, the container and, for a timed collection, the
/// patient's sheet. Words are keys of assets/reception/rules.toml.
struct Delivery {
  // Request form.
  std::string form_name;
  std::string form_number;
  std::string age_sex;
  std::string ward;
  std::string question; ///< The doctor's words.
  std::string remark;   ///< What else stands on the form; may be empty.
  std::vector<std::string> requests;
  std::string kind;
  std::optional<int> passed_min; ///< Nothing when no time is written.
  std::optional<int> start_min;  ///< Of a timed collection, as written.
  std::optional<int> stop_min;
  int received_min = 0;
  bool replaceable = true; ///< Whether the patient can give another.
  // Label.
  std::string label = "container";         ///< "container", "lid" or "none".
  std::optional<std::string> label_name;   ///< Nothing when it is not written.
  std::optional<std::string> label_number; ///< The same.
  std::string label_preservative = "none"; ///< What the label says was put in.
  // Container.
  std::string container;
  std::string storage = "room"; ///< On the way: "room" or "refrigerated".
  std::string contamination = "none";
  bool leaking = false;
  double volume_ml = 0;
  std::optional<DayRecord> day;
};

/// "07:40", or "07:40 day 2".
[[nodiscard]] std::string say_clock(int minutes);

/// Minutes of "07:40" or "07:40 day 2" (days 1 to 9); nothing when it is no such time.
[[nodiscard]] std::optional<int> clock_from_text(const std::string& text);

} // namespace matula::reception
