#pragma once

#include "engine/scenario/problem.hpp"

#include <tl/expected.hpp>

#include <filesystem>
#include <string>
#include <vector>

namespace matula::reception {

/// What a patient is told before one kind of collection.
struct Sheet {
  std::string key;
  std::string title;
  std::vector<std::string> kinds; ///< Kinds of specimen it is for.
  std::vector<std::string> steps;
  std::string source;
};

/// Reads assets/reception/instructions.toml; every problem is reported.
[[nodiscard]] tl::expected<std::vector<Sheet>, scenario::Problems>
load_instructions(const std::filesystem::path& assets_folder);

} // namespace matula::reception
