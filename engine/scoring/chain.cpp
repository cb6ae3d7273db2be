#include "engine/scoring/chain.hpp"

#include <cmath>

namespace matula::scoring {
namespace {

// Half a scale division for rounding to 0.001, and a tenth of one for a rule result already rounded once.
constexpr double tolerance = 0.0006;
// A line of the calculation lies near 1, a bare correction near 0.
constexpr double bare_correction_below = 0.5;

bool accepts(const std::vector<Span>& spans, double correction) {
  for (const auto& span : spans) {
    if (correction >= span.low - tolerance && correction <= span.high + tolerance) {
      return true;
    }
  }
  return false;
}

std::vector<Span> sums(const std::vector<Span>& left, const std::vector<Span>& right) {
  std::vector<Span> all;
  for (const auto& a : left) {
    for (const auto& b : right) {
      all.push_back({a.low + b.low, a.high + b.high});
    }
  }
  return all;
}

/// Corrections the steps first..last may make together; `slipped` (if in range) makes its slip instead.
std::vector<Span> together(const std::vector<Step>& steps, std::size_t first, std::size_t last,
                           std::size_t slipped, double slip) {
  std::vector<Span> total{{0, 0}};
  for (std::size_t i = first; i <= last; ++i) {
    total = sums(total, i == slipped ? std::vector<Span>{{slip, slip}} : steps[i].accepted);
  }
  return total;
}

/// The one step of first..last whose slip explains the correction, and the words for it.
std::optional<std::pair<std::size_t, std::string>>
find_slip(const std::vector<Step>& steps, std::size_t first, std::size_t last, double correction) {
  for (std::size_t i = first; i <= last; ++i) {
    for (const auto& slip : steps[i].slips) {
      if (accepts(together(steps, first, last, i, slip.correction), correction)) {
        return std::pair{i, slip.words};
      }
    }
  }
  return std::nullopt;
}

/// Judges the written line of `last` and the unwritten ones before it from `first` on.
void judge(std::vector<StepVerdict>& verdicts, const std::vector<Step>& steps, std::size_t first,
           std::size_t last, double correction, const std::vector<double>& earlier_lines) {
  constexpr auto nobody = static_cast<std::size_t>(-1);
  const bool right = accepts(together(steps, first, last, nobody, 0), correction);
  const auto slip = right ? std::nullopt : find_slip(steps, first, last, correction);
  for (std::size_t i = first; i <= last; ++i) {
    verdicts[i].right = right || (slip && slip->first != i);
    if (slip && slip->first == i) {
      verdicts[i].slip = slip->second;
    }
  }
  if (right || slip || first != last) {
    return;
  }
  const double line = verdicts[last].from + correction;
  for (const double earlier : earlier_lines) {
    if (accepts(steps[last].accepted, line - earlier)) {
      verdicts[last].slip = "it was worked from an earlier line, so a correction already made is lost";
      return;
    }
  }
}

} // namespace

std::vector<StepVerdict> mark_chain(double start, const std::vector<Step>& steps) {
  std::vector<StepVerdict> verdicts(steps.size());
  std::vector<double> earlier;
  double previous = start;
  std::size_t first = 0;
  for (std::size_t i = 0; i < steps.size(); ++i) {
    verdicts[i].from = previous;
    verdicts[i].expected_line = previous + steps[i].expected;
    if (!steps[i].entered) {
      continue;
    }
    verdicts[i].written = true;
    const bool bare = std::abs(*steps[i].entered) < bare_correction_below;
    const double correction = bare ? *steps[i].entered : *steps[i].entered - previous;
    judge(verdicts, steps, first, i, correction, earlier);
    earlier.push_back(previous);
    previous += correction;
    first = i + 1;
  }
  return verdicts;
}

} // namespace matula::scoring
