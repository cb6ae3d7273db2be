#pragma once

#include "engine/scenario/problem.hpp"

#include <tl/expected.hpp>

#include <filesystem>
#include <string>
#include <vector>

namespace matula::generator {

/// Invented names to draw from: assets/people.toml.
struct People {
  std::vector<std::string> female;
  std::vector<std::string> male;
  std::vector<std::string> surnames;
};

[[nodiscard]] tl::expected<People, scenario::Problems> read_people(const std::filesystem::path& file);

} // namespace matula::generator
