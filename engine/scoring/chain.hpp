#pragma once

#include <optional>
#include <string>
#include <vector>

namespace matula::scoring {

/// A span of corrections (relative density) that a step may rightly make.
struct Span {
  double low = 0;
  double high = 0;
};

/// A known slip: the correction it leads to and how to say it ("the sign was turned round").
struct Slip {
  double correction = 0;
  std::string words;
};

/// One line of the calculation: previous line plus a correction.
struct Step {
  std::string name;           ///< "zero", "temperature", "protein", "glucose", "corrected"
  double expected = 0;        ///< Correction by the laboratory's written rule, for showing.
  std::vector<Span> accepted; ///< By the rule or by physics.
  std::vector<Slip> slips;
  std::optional<double> entered; ///< The line written, or the correction itself when nearer to 0 than to 1.
};

/// What was made of one step.
struct StepVerdict {
  bool right = false;
  bool written = false;
  double from = 1;          ///< The learner's own previous line.
  double expected_line = 1; ///< What the rule makes of it.
  std::string slip;         ///< Words for what went wrong; empty when right or unexplained.
};

/// Marks each step from the learner's own previous line, so that one slip is paid for once. Lines left out
/// are judged by the next line that is written. `start` is the learner's own reading.
[[nodiscard]] std::vector<StepVerdict> mark_chain(double start, const std::vector<Step>& steps);

} // namespace matula::scoring
