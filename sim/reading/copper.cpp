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
    "clear blue",
    "blue-green, little or no precipitate",
    "green with a yellow precipitate",
    "yellow precipitate",
    "muddy orange precipitate",
    "brick-red precipitate",
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
  const double hue = std::max(hue_deg(mean_colour_on_white(*looks.white, above_the_bed)), 1.0);
  Margins margins{};
  for (std::size_t k = 0; k < thresholds.copper_stood_hue_deg.size(); ++k) {
    margins[k] = std::log(line_deg(thresholds, k, sunk) / hue);
  }
  margins.back() = std::log(thresholds.copper_hue_deg.back() / hue);
  const bool has_bed = looks.white->sediment.height_mm > 0;
  if (!has_bed) {
    // Bile makes the blue liquid green too, but leaves it clear.
    const double print = mean_print_contrast(*looks.white, above_the_bed);
    margins.front() = std::min(margins.front(), falling(print, thresholds.copper_print_trace));
  }
  if (has_bed && sunk > mostly_settled) {
    // Now the precipitate tells its colour where it lies.
    const double bed_hue = std::max(hue_deg(looks.white->sediment.colour), 1.0);
    const auto& lines = thresholds.copper_bed_hue_deg;
    for (std::size_t k = 0; k < lines.size(); ++k) {
      margins[margins.size() - lines.size() + k] = std::log(lines[k] / bed_hue);
    }
  }
  const Grade grade = highest_crossed(margins);
  return {grade, intensity(grade, margins), seen_words[static_cast<std::size_t>(grade)]};
}

std::vector<std::string> copper_table() {
  return {seen_words.begin(), seen_words.end()};
}

} // namespace matula::reading
