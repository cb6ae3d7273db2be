#pragma once

#include "engine/scenario/problem.hpp"
#include "sim/specimen/specimen.hpp"

#include <tl/expected.hpp>

#include <filesystem>
#include <map>
#include <string>
#include <vector>

namespace matula::matter {
struct Catalogue;
}

namespace matula::quality {

/// A specimen of known make, and what it must show.
struct Control {
  std::string key;
  std::string label;
  specimen::Specimen specimen;
  double gravity = 1;                         ///< 20/20, by its recipe.
  std::map<std::string, std::string> targets; ///< Test and grade word.
};

/// Reads assets/quality/controls.toml under the assets folder.
[[nodiscard]] tl::expected<std::vector<Control>, scenario::Problems>
load_controls(const std::filesystem::path& assets_folder, const matter::Catalogue& catalogue);

/// The control of that key, or null.
[[nodiscard]] const Control* find_control(const std::vector<Control>& controls, const std::string& key);

} // namespace matula::quality
