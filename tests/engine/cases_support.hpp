#pragma once

#include "engine/assets/world.hpp"
#include "engine/scenario/scenario.hpp"

#include <catch2/catch.hpp>

#include <filesystem>
#include <string>

namespace matula::test {

inline const std::filesystem::path case_folder = MATULA_SOURCE_DIR "/scenarios";

/// The shipped world, loaded once.
inline const assets::World& world() {
  static const auto read = assets::load(assets::folder());
  if (!read) {
    FAIL(scenario::to_text(read.error()));
  }
  return **read;
}

/// A shipped case by its file's name without the ending.
inline scenario::Scenario load_case(const std::string& key) {
  const auto read = scenario::load(case_folder / (key + ".toml"), world().catalogue);
  if (!read) {
    FAIL(scenario::to_text(read.error()));
  }
  return *read;
}

} // namespace matula::test
