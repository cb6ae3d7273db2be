#include "sim/reading/copper.hpp"

#include "sim/reading/observables.hpp"
#include "sim/reading/stages.hpp"

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
constexpr Stretch whole_tube{0.05, 0.97};
constexpr double mostly_settled = 0.5;

/// Hue angle, 0..360 degrees, turned so that brick red to violet-blue never wraps.
double hue_deg(const optics::Xyz& colour) {
  const optics::Lab lab = optics::to_lab(colour, d65_white);
  const double degrees = std::atan2(lab.b, lab.a) * 180.0 / std::numbers::pi;
  return degrees < -30 ? degrees + 360 : degrees;
}

} // namespace

GradeReading read_copper(const Looks& looks, const Thresholds& thresholds) {
  // A tube that has stood shows its precipitate on the bottom: that is what is named.
  const bool settled = looks.white->settled_share > mostly_settled;
  const double hue =
      hue_deg(settled ? looks.white->sediment.colour : mean_colour_on_white(*looks.white, whole_tube));
  Margins margins{};
  for (std::size_t k = 0; k < margins.size(); ++k) {
    margins[k] = std::log(thresholds.copper_hue_deg[k] / std::max(hue, 1.0));
  }
  const Grade grade = highest_crossed(margins);
  return {grade, intensity(grade, margins), seen_words[static_cast<std::size_t>(grade)]};
}

} // namespace matula::reading
