#pragma once

#include "engine/scenario/problem.hpp"

#include <tl/expected.hpp>

#include <filesystem>
#include <string>
#include <vector>

namespace matula::window {

/// One test or task explained step by step.
struct HelpTopic {
  std::string title;
  std::vector<std::string> tests; ///< Procedures whose words `grades` explains.
  std::vector<std::string> steps;
  std::vector<std::string> grades; ///< "word: what it looks like"; may be empty.
  std::string source;
};

/// Reads assets/help.toml.
[[nodiscard]] tl::expected<std::vector<HelpTopic>, scenario::Problems>
load_help(const std::filesystem::path& assets_folder);

} // namespace matula::window
