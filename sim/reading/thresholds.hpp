#pragma once

#include "sim/optics/colour.hpp"

#include <array>
#include <string>
#include <vector>

namespace matula::reading {

/// A word for the colour of urine and where it sits in CIELAB (D65, white card).
struct NamedColour {
  std::string word;
  optics::Lab centre;
};

/// Lines on what the eye sees that part one word from the next. Values and sources:
/// assets/reading/thresholds.toml.
struct Thresholds {
  double veil_trace = 0.02;           ///< Weber contrast on the black card.
  double dark_surround = 0.03;        ///< Luminance the veil is compared with, white card = 1.
  double print_contrast_1plus = 0.75; ///< Share of a printed line's contrast left, falling.
  double granularity_2plus = 0.05;    ///< RMS contrast per element of the eye, rising.
  double floc_size_3plus_mm = 0.6;    ///< Size holding half of the visible solid, rising.
  double clot_fraction_4plus = 0.4;   ///< Share of the treated column, rising.
  double clot_fraction_3plus = 0.03;  ///< Share of the column's height, rising.
  double settled_share_2plus = 0.1;   ///< Share of the solid on the bottom that tells of grains.
  double settled_share_3plus = 0.5;   ///< Share of the solid on the bottom.
  double copper_print_trace = 0.6;    ///< Print contrast above which a tube is too clear for any reduction.
  std::array<double, 5> copper_hue_deg{};       ///< Hue lines negative|trace ... 3+|4+, falling.
  std::array<double, 4> copper_stood_hue_deg{}; ///< The first four lines for the liquid above the bed.
  /// Share of the solid on the bottom at which those hold; in between the lines move with the share.
  std::array<double, 4> copper_stood_share{1, 1, 1, 1};
  /// The last three lines, 1+|2+ to 3+|4+, for the bed itself, once most of the solid lies there; falling.
  std::array<double, 3> copper_bed_hue_deg{};
  std::array<double, 3> clarity_contrast{}; ///< clear|hazy|cloudy|turbid, falling.
  std::vector<NamedColour> urine_colours;
};

} // namespace matula::reading
