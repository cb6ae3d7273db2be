#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace matula::reception {

struct Book;
struct Delivery;

/// A line of a form or label: what it is called and what is written there (empty where nothing is).
using WrittenLine = std::pair<std::string, std::string>;

/// A row of the patient's sheet.
struct ShownVoid {
  std::string at;
  std::string volume;
  bool kept = false;
  std::string bottle; ///< "bottle", "day" or "night".
};

/// The sheet of a 24-hour collection, and what the laboratory measured in the mixed bottle.
struct ShownDay {
  std::string weight;
  std::string sex;
  std::string index_range; ///< "11 to 20 mg/kg"
  bool pair = false;
  std::vector<ShownVoid> voids;
  std::vector<WrittenLine> bottles; ///< "Bottle": "protein 3.5 g/L, creatinine 0.9 g/L"
  std::string bands;                ///< The lines between the bands, with both heavy ones.
};

/// A delivery as it lies on the counter: what may be read of it, and no more.
struct Shown {
  std::string kind; ///< Key, for the sheet of instructions.
  std::vector<WrittenLine> form;
  std::vector<std::string> requests;
  std::string label_place; ///< "container", "lid" or "none".
  std::vector<WrittenLine> label;
  std::vector<WrittenLine> container;
  std::vector<std::pair<std::string, std::vector<WrittenLine>>> faults; ///< Title, then key and wording.
  std::optional<ShownDay> day;
};

[[nodiscard]] Shown show(const Delivery& delivery, const Book& book);

} // namespace matula::reception
