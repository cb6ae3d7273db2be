#pragma once

#include "cases_support.hpp"

#include "engine/scoring/standards.hpp"

namespace matula::test {

/// How sittings are marked, loaded once.
inline const scoring::Standards& standards() {
  static const auto read = scoring::load_standards(assets::folder());
  if (!read) {
    FAIL(scenario::to_text(read.error()));
  }
  return *read;
}

} // namespace matula::test
