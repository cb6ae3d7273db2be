#pragma once

#include "engine/scoring/chain.hpp"

#include <string>
#include <vector>

namespace matula::attribution {

/// What one line of the corrections did wrong. Relative densities.
struct LineError {
  bool wrong = false;
  double made = 0;  ///< Correction that was made.
  double error = 0; ///< What it adds to the result too much; also of a line within tolerance.
  std::string slip;
};

/// A whole calculation taken apart: result = reading + expected + accepted + errors of the wrong lines.
struct LineErrors {
  bool any_line = false; ///< Whether anything was worked out at all.
  double expected = 0;   ///< All corrections by the rule, from the learner's own figures.
  double accepted = 0;   ///< Deviations from it that were accepted.
  std::vector<LineError> lines;
};

/// Takes a calculation from `start` apart by the marks of its lines (scoring::mark_chain).
[[nodiscard]] LineErrors line_errors(double start, const std::vector<scoring::Step>& steps);

} // namespace matula::attribution
