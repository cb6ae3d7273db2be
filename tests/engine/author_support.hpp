#pragma once

#include "engine/assets/world.hpp"
#include "engine/author/shelf.hpp"
#include "engine/scenario/scenario.hpp"

#include <catch2/catch.hpp>

namespace matula::test {

inline const scoring::Standards& standards() {
  static const auto read = scoring::load_standards(assets::folder());
  if (!read) {
    FAIL(scenario::to_text(read.error()));
  }
  return *read;
}

/// Read once for all tests of a program.
inline const author::Shelf& shelf() {
  static const auto world = assets::load(assets::folder());
  if (!world) {
    FAIL(scenario::to_text(world.error()));
  }
  static const auto read = author::load_shelf(**world, standards(), assets::folder());
  if (!read) {
    FAIL(scenario::to_text(read.error()));
  }
  return **read;
}

inline std::string joined(const std::vector<std::string>& words) {
  std::string all;
  for (const auto& one : words) {
    all += one + "\n";
  }
  return all;
}

} // namespace matula::test
