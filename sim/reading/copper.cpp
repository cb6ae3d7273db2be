#include "sim/reading/copper.hpp"

#include "sim/reading/observables.hpp"
#include "sim/reading/stages.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace matula::reading {

namespace {

constexpr std::array<const char*, grade_count> seen_words{
    "clear blue",         "green, little or no precipitate", "green with a yellow precipitate",
    "yellow precipitate", "muddy orange precipitate",        "brick-red precipitate",
};

constexpr optics::Xyz d65_white{0.95047, 1.0, 1.08883};
constexpr Stretch above_the_bed{0.5, 0.97};
constexpr double mostly_settled = 0.5;

/// Hue angle, 0..360 degrees, turned so that brick red to violet-blue never wraps.
double hue_deg(const optics::Xyz& colour) {
  const optics::Lab lab = optics::to_lab(colour, d65_white);
  const double degrees = std::atan2(lab.b, lab.a) * 180.0 / std::numbers::pi;
  return degrees < -30 ? degrees + 360 : degrees;
}

/// A line of the shaken tube, moved by what has sunk out of it: a reader makes allowance for the bed.
double line_deg(const Thresholds& thresholds, std::size_t k, double sunk_share) {
  const double moved = std::min(1.0, sunk_share / thresholds.copper_stood_share[k]);
  return thresholds.copper_hue_deg[k] +
         moved * (thresholds.copper_stood_hue_deg[k] - thresholds.copper_hue_deg[k]);
}

} // namespace

GradeReading read_copper(const Looks& looks, const Thresholds& thresholds) {
  const double sunk = looks.white->settled_share;
  const double hue = hue_deg(mean_colour_on_white(*looks.white, above_the_bed));
  Margins margins{};
  for (std::size_t k = 0; k < thresholds.copper_stood_hue_deg.size(); ++k) {
    margins[k] = std::log(line_deg(thresholds, k, sunk) / std::max(hue, 1.0));
  }
  // Brick red is told by the precipitate, wherever it is.
  const std::size_t last = margins.size() - 1;
  margins[last] = sunk > mostly_settled ? std::log(thresholds.copper_bed_hue_4plus_deg /
                                                   std::max(hue_deg(looks.white->sediment.colour), 1.0))
                                        : std::log(thresholds.copper_hue_deg[last] / std::max(hue, 1.0));
  const Grade grade = highest_crossed(margins);
  return {grade, intensity(grade, margins), seen_words[static_cast<std::size_t>(grade)]};
}

} // namespace matula::reading
