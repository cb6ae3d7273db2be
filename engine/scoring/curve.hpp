#pragma once

#include "engine/procedure/curve.hpp"
#include "engine/reception/day_parts.hpp"

#include <optional>
#include <utility>
#include <vector>

namespace matula::scoring {

/// A drawn curve: what each tube holds and the absorbance written for it, rising, from nothing at 0.
using OwnCurve = std::vector<std::pair<double, double>>;

/// What may be read off it at an absorbance: first on the line from point to point (its last piece goes on
/// beyond the end), then on the best straight lines through all points, with and without the origin. Empty
/// for a curve that does not rise there.
[[nodiscard]] std::vector<double> read_off(const OwnCurve& curve, double absorbance);

/// What the learner wrote for a curve, or the instrument showed where nothing was written.
struct CurveEntries {
  std::optional<double> blank;
  std::vector<std::optional<double>> standards; ///< In the order of the curve.
  std::optional<double> sample;
  std::string net;
  std::string read;
  std::string dilution;
  std::string value;
  std::optional<double> own_dilution; ///< Of the tube that was read; nothing when none was.
};

/// One line of the calculation, judged from the learner's own lines before it.
struct CurveVerdict {
  procedure::CurveLine line = procedure::CurveLine::Net;
  reception::DayLine judged;
};

/// Net, Read, Dilution and Value, in this order; a slip costs its own line only.
[[nodiscard]] std::vector<CurveVerdict>
mark_curve_lines(const procedure::Curve& curve, const std::string& unit, const CurveEntries& entries);

} // namespace matula::scoring
