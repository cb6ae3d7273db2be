#pragma once

#include "sim/reading/grade.hpp"

#include <array>

namespace matula::reading {

/// How far each line of a scale has been crossed: positive beyond it, negative short of it, in comparable
/// (log) units. margin[k] belongs to the line below grade k + 1.
using Margins = std::array<double, grade_count - 1>;

/// The highest grade whose line is crossed.
[[nodiscard]] Grade highest_crossed(const Margins& margins);

/// Continuous intensity of that grade: its lower line is grade - 0.5, the next line grade + 0.5, in between
/// by the shares of the two distances.
[[nodiscard]] double intensity(Grade grade, const Margins& margins);

/// Margin of a line that a scale does not have.
inline constexpr double no_line = -1e3;

/// log(value / line), for observables that rise with the dose; values are floored so that the margin stays
/// finite.
[[nodiscard]] double rising(double value, double line);

/// log(line / value), for observables that fall with the dose.
[[nodiscard]] double falling(double value, double line);

} // namespace matula::reading
