#pragma once

#include "engine/assets/world.hpp"
#include "engine/practice/choose.hpp"
#include "engine/practice/difficulty.hpp"
#include "engine/practice/item.hpp"
#include "engine/practice/store.hpp"
#include "engine/scoring/standards.hpp"

#include <catch2/catch.hpp>

namespace matula::test {

/// Read once for all tests of a program.
inline const practice::Store& store() {
  static const auto folder = std::filesystem::path(MATULA_SOURCE_DIR) / "assets";
  static const auto world = assets::load(folder);
  static const auto standards = scoring::load_standards(folder);
  if (!world || !standards) {
    FAIL(scenario::to_text(!world ? world.error() : standards.error()));
  }
  static const auto read = practice::load_store(**world, *standards, folder);
  if (!read) {
    FAIL(scenario::to_text(read.error()));
  }
  return **read;
}

/// As it would stand in the record.
inline learner::Answer answered(const practice::Unknown& unknown, double difficulty, bool right,
                                std::int64_t when_s) {
  learner::Answer answer;
  answer.when_s = when_s;
  answer.skill = practice::to_word(unknown.skill);
  answer.test = practice::has_tubes(unknown.skill) ? unknown.what : "";
  answer.unknown = practice::to_text(unknown);
  answer.difficulty = difficulty;
  answer.credit = right ? 1000 : 0;
  if (practice::has_tubes(unknown.skill)) {
    answer.intensity = unknown.target;
  }
  return answer;
}

} // namespace matula::test
