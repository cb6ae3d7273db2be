#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <span>
#include <vector>

namespace matula::statistics {

inline constexpr std::size_t grades = 6; ///< negative, trace, 1+ to 4+
inline constexpr std::size_t lines = grades - 1;

/// Where the model's own reader draws the lines, in grades.
inline constexpr std::array<double, lines> reference_lines{0.5, 1.5, 2.5, 3.5, 4.5};

/// One reading of a tube whose intensity is known.
struct GradedReading {
  double intensity = 0; ///< The model's, in grades: 2 is the middle of 1+.
  int grade = 0;        ///< 0 negative to 5 4+.
  /// Above `grade`: it was one of the grades up to this one, and which is left out of account. Standard
  /// errors take no notice of that.
  int at_most = -1;
};

/// A reader's own lines: P(grade <= k) = Phi((line_k - x) / spread).
struct Boundaries {
  std::size_t words = grades; ///< Of the scale; only the lines between them are the reader's.
  std::array<double, lines> line{};
  double spread = 0; ///< Standard deviation of the eye, in grades.
  double shift = 0;  ///< Mean distance from the reference lines; below 0: calls a tube more than it is.
  std::array<double, lines> line_se{}; ///< Standard errors, from the curvature.
  double shift_se = 0;
  double log_posterior =
      0; ///< At the estimate, without the prior's constant; without a prior, the log-likelihood.
  int steps = 0;
};

/// What is held of readers before their readings are seen: proposals of this program, not published values.
struct BoundaryPrior {
  double shift_sd = 0.6;    ///< Of the line between 1+ and 2+.
  double log_gap_sd = 0.35; ///< Of the logarithms of the four distances; the reference's are 1 grade.
  double log_spread = -0.693147180559945309; ///< Of the spread: log 0.5.
  double log_spread_sd = 0.4;
  bool none = false; ///< Plain maximum likelihood, which does not exist for every learner.
};

/// The most probable lines. The gaps are estimated as logarithms, so that lines never cross and an unused
/// grade does not let its two neighbours fall together. Damped Newton steps,
/// Fisher's scoring where they do not lead uphill; standard errors from Fisher's information. Nothing when it
/// does not settle, as without a prior for readings in perfect order. Throws std::out_of_range for a grade
/// below 0 or above 5.
[[nodiscard]] std::optional<Boundaries> fit_boundaries(std::span<const GradedReading> readings,
                                                       const BoundaryPrior& prior = {},
                                                       std::size_t words = grades);

/// The same for many readers, each by itself, on this many threads. A reader's readings must outlive the
/// call. Throws like fit_boundaries (on one thread).
[[nodiscard]] std::vector<std::optional<Boundaries>>
fit_boundaries_of_all(const std::vector<std::span<const GradedReading>>& readers, int threads,
                      const BoundaryPrior& prior = {});

/// Chance that the shift is larger than `least` grades either way.
[[nodiscard]] double chance_of_shift(double shift, double se, double least);

/// Readings of tubes whose intensity lies within `near` grades of where the model draws a line.
[[nodiscard]] int readings_near(std::span<const GradedReading> readings, std::size_t line, double near);

/// When a sentence about a line may be said. Proposals of this program.
struct SpeakingRule {
  double least_shift = 0.25; ///< Grades; a smaller one is no concern.
  double least_chance = 0.9; ///< That the shift is larger.
  double near = 0.75;        ///< Grades within which a reading tells of a line,
  int least_near = 4;        ///< and how many must.
  /// Standard errors are taken so many times wider: the curvature's own cover one to three points too few of
  /// a hundred (tests/published/statistics_small.cpp).
  double widening = 1.08;
};

/// Whether a sentence about a line may be said: the shift is probably real, and enough readings lie near it.
[[nodiscard]] bool may_speak_of_line(const Boundaries& fitted, std::size_t line,
                                     std::span<const GradedReading> readings, const SpeakingRule& rule = {});

} // namespace matula::statistics
