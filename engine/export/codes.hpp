#pragma once

#include "engine/scenario/problem.hpp"

#include <tl/expected.hpp>

#include <filesystem>
#include <map>
#include <string>

namespace matula::exports {

/// By what name the world's laboratories know a line of the worksheet.
struct Code {
  std::string loinc;  ///< Empty where there is none that fits.
  std::string name;   ///< The code's own long name.
  std::string ucum;   ///< Unit of a figure, "1" for a bare number; empty for a word.
  std::string method; ///< In words: the codes do not tell manual techniques apart.
};

/// Codes by item ("ssa.grade"), and what must be printed beside them.
struct Codes {
  std::map<std::string, Code> by_item;
  std::string panel; ///< The report's own code,
  std::string panel_name;
  std::string notice; ///< Licence of the codes.
};

/// Reads assets/records/codes.toml under the assets folder; every problem is reported.
[[nodiscard]] tl::expected<Codes, scenario::Problems> load_codes(const std::filesystem::path& assets_folder);

} // namespace matula::exports
