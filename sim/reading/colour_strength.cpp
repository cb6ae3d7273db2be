#include "sim/reading/colour_strength.hpp"

#include "sim/reading/observables.hpp"
#include "sim/reading/stages.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace matula::reading {

namespace {

constexpr optics::Xyz d65_white{0.95047, 1.0, 1.08883};
constexpr Stretch clear_of_the_ends{0.05, 0.95};
constexpr Stretch upper{0.55, 0.95};
constexpr double ring_mm = 2; // Thinnest band an eye grades by its colour.
constexpr double least_l = 1; // Lightness below which black is black.
constexpr double no_strength = 1e-4;

/// Strongest band of the width of a ring.
double strongest_band(const appearance::Appearance& white, double hue_deg) {
  double strongest = 0;
  for_ring_bands(white, [&](const Stretch& band) {
    strongest = std::max(strongest, colour_strength(mean_colour_on_white(white, band), hue_deg));
  });
  return strongest;
}

/// The lower liquid, from clear of the round bottom to just under the border.
Stretch lower_of(const appearance::Appearance& white) {
  const double border = white.heavy_to_mm / std::max(white.level_mm, 1e-9);
  return {0.3 * border, 0.9 * border};
}

} // namespace

void for_ring_bands(const appearance::Appearance& looks, const std::function<void(const Stretch&)>& visit) {
  const double half = 0.5 * ring_mm / std::max(looks.level_mm, ring_mm);
  for (double middle = clear_of_the_ends.from; middle <= clear_of_the_ends.to; middle += half) {
    visit({middle - half, middle + half});
  }
}

double colour_strength(const optics::Xyz& colour, double hue_deg) {
  const optics::Lab lab = optics::to_lab(colour, d65_white);
  const double hue = hue_deg * std::numbers::pi / 180;
  const double along = lab.a * std::cos(hue) + lab.b * std::sin(hue);
  return std::max(along, 0.0) / std::max(lab.l, least_l);
}

double strength_seen(const appearance::Appearance& white, const ColourScale& scale) {
  switch (scale.where) {
  case Where::Tube:
    return colour_strength(mean_colour_on_white(white, clear_of_the_ends), scale.hue_deg);
  case Where::Ring:
    return strongest_band(white, scale.hue_deg);
  case Where::Upper:
    return colour_strength(mean_colour_on_white(white, upper), scale.hue_deg);
  case Where::Lower:
    return white.heavy_to_mm > 0
               ? colour_strength(mean_colour_on_white(white, lower_of(white)), scale.hue_deg)
               : 0;
  case Where::Paper:
    return 0; // A paper is no vessel: whoever holds it takes its colour's strength.
  }
  return 0;
}

GradeReading read_strength(const Looks& looks, const ColourScale& scale) {
  return graded_by_lines(strength_seen(*looks.white, scale), scale);
}

GradeReading graded_by_lines(double value, const ColourScale& scale) {
  const double strength = std::max(value, no_strength);
  Margins margins{};
  margins.fill(no_line);
  for (std::size_t k = 0; k < std::min(scale.lines.size(), margins.size()); ++k) {
    margins[k] = rising(strength, scale.lines[k]);
  }
  const Grade grade = highest_crossed(margins);
  const auto index = static_cast<std::size_t>(grade);
  return {grade, intensity(grade, margins), index < scale.seen.size() ? scale.seen[index] : ""};
}

} // namespace matula::reading
