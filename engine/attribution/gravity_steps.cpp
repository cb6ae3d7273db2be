#include "engine/attribution/gravity_steps.hpp"

#include <cmath>

namespace matula::attribution {
namespace {

constexpr double bare_correction_below =
    0.5; // As in scoring/chain.cpp: a line lies near 1, a correction near 0.

/// Charges what a written line and the unwritten ones before it are off to the line whose slip it was, else
/// to the written one.
void charge(LineErrors& all, const std::vector<scoring::Step>& steps,
            const std::vector<scoring::StepVerdict>& verdicts, std::size_t first, std::size_t last,
            double made) {
  double expected = 0;
  std::size_t guilty = last;
  for (std::size_t i = first; i <= last; ++i) {
    expected += steps[i].expected;
    all.lines[i].made = steps[i].expected;
    guilty = !verdicts[i].right && !verdicts[i].slip.empty() ? i : guilty;
  }
  LineError& line = all.lines[guilty];
  line.error = made - expected;
  line.made += line.error;
  line.wrong = !verdicts[guilty].right;
  line.slip = verdicts[guilty].slip;
}

} // namespace

LineErrors line_errors(double start, const std::vector<scoring::Step>& steps) {
  const auto verdicts = scoring::mark_chain(start, steps);
  LineErrors all;
  all.lines.resize(steps.size());
  double previous = start;
  std::size_t first = 0;
  for (std::size_t i = 0; i < steps.size(); ++i) {
    all.expected += steps[i].expected;
    if (!steps[i].entered) {
      continue;
    }
    all.any_line = true;
    const bool bare = std::abs(*steps[i].entered) < bare_correction_below;
    const double made = bare ? *steps[i].entered : *steps[i].entered - previous;
    charge(all, steps, verdicts, first, i, made);
    previous += made;
    first = i + 1;
  }
  // What no line holds was never corrected for.
  for (std::size_t i = first; i < steps.size(); ++i) {
    all.lines[i] = {!verdicts[i].right && steps[i].expected != 0, 0, -steps[i].expected, verdicts[i].slip};
  }
  for (const auto& line : all.lines) {
    all.accepted += line.wrong ? 0 : line.error;
  }
  return all;
}

} // namespace matula::attribution
