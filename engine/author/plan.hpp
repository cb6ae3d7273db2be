#pragma once

#include "engine/author/wish.hpp"

#include <tl/expected.hpp>

#include <filesystem>
#include <map>
#include <string>
#include <vector>

namespace matula::author {

/// One unknown of a set: what its tests are to show and what is to mislead.
struct PlanRow {
  std::map<std::string, std::string> words;  ///< By test.
  std::string trap;                          ///< A key of assets/author/traps.toml, or "plain".
  double from_line = 0.3;                    ///< Grades to the nearest line between two words.
  std::vector<double> gravity{1.012, 1.024}; ///< From, to: a specimen of its own for everybody.
  std::vector<double> ph{5.4, 6.6};
  bool look = true;
  bool specific_gravity = true;
};

/// A table of tests by grades by traps, from which everybody gets a form of their own: see the author's
/// guide.
struct Plan {
  std::string key; ///< File name without its ending.
  std::string title;
  std::string about;       ///< Printed at the head of each student's sheet.
  double tolerance = 0.15; ///< Logits by which the same unknown may be harder in one form than in another.
  std::vector<PlanRow> rows;
};

/// Reads a plan; lists of words and of traps are multiplied out. Every problem is reported.
[[nodiscard]] tl::expected<Plan, scenario::Problems> read_plan(const std::filesystem::path& file,
                                                               const Shelf& shelf);

} // namespace matula::author
