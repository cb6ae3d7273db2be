#pragma once

#include "engine/practice/rules.hpp"

#include <cstdint>
#include <filesystem>
#include <string>
#include <vector>

namespace matula::scoring {
struct Standards;
}

namespace matula::practice {

/// What one stretch of a quiz is made of: everything in `what` with every trap, `count` times.
struct Part {
  Skill skill = Skill::Turbidity;
  std::vector<std::string> tests; ///< Of tubes.
  std::vector<std::string> what;  ///< Words of grades; sets of steps; faults. Of a float "float".
  std::vector<std::string> traps; ///< Urines of tubes, waters of a float; otherwise "plain".
  double from_line = 0.35;        ///< Grades of a tube, divisions of a float; 0 on the line.
  int count = 1;
};

/// A self-assessment quiz as a teacher sets it: one file of assets/quizzes.
struct Blueprint {
  std::string key; ///< File name without its ending.
  std::string title;
  std::string about;
  int minutes = 0; ///< 0: as long as it takes.
  std::vector<Part> parts;

  /// How many unknowns it asks for.
  [[nodiscard]] int size() const;
};

/// Reads one blueprint; every problem is reported.
[[nodiscard]] tl::expected<Blueprint, scenario::Problems>
read_blueprint(const std::filesystem::path& file, const Rules& rules, const scoring::Standards& standards);

/// Files of blueprints in a folder, sorted; none where there is no such folder.
[[nodiscard]] std::vector<std::filesystem::path> blueprint_files(const std::filesystem::path& folder);

} // namespace matula::practice
