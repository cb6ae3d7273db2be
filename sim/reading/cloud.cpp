#include "sim/reading/cloud.hpp"

#include "sim/reading/observables.hpp"
#include "sim/reading/stages.hpp"

#include <algorithm>
#include <array>

namespace matula::reading {

namespace {

constexpr std::array<const char*, grade_count> seen_words{
    "clear, no cloud",
    "a faint cloud, seen on black, print quite clear",
    "a definite cloud without grains",
    "a cloud with distinct grains",
    "flocs, flakes of precipitate",
    "clumps or solid curd",
};

// The treated part: all of an acid tube, the upper part of a half-boiled one.
constexpr Stretch acid_part{0.05, 0.97};
constexpr Stretch heated_part{0.72, 0.97};
constexpr Stretch control_part{0.06, 0.30};
constexpr double some_still_hang = 0.5; // of the contrast that makes a cloud granular by itself

/// Share of a stretch of the column that the clot takes up.
double clotted_share(const appearance::Appearance& looks, Stretch part) {
  const double from_mm = std::max(looks.clot_from_mm, part.from * looks.level_mm);
  const double to_mm = std::min(looks.clot_to_mm, part.to * looks.level_mm);
  return std::max(0.0, to_mm - from_mm) / ((part.to - part.from) * looks.level_mm);
}

double weber(double luminance, double control, double surround) {
  return std::max(luminance - control, 0.0) / (control + surround);
}

} // namespace

GradeReading read_cloud(bool against_lower_part, const Looks& looks, const Thresholds& thresholds) {
  const Stretch part = against_lower_part ? heated_part : acid_part;
  const double control = against_lower_part ? std::min(mean_luminance_on_black(*looks.black, control_part),
                                                       mean_luminance_on_black(*looks.black, part))
                                            : thresholds.dark_surround;
  const double veil = weber(mean_luminance_on_black(*looks.black, part), control, thresholds.dark_surround);
  const double contrast = mean_print_contrast(*looks.printed, part);
  const double grains =
      std::max(mean_granularity(*looks.white, part), mean_granularity(*looks.white, acid_part));
  const double flocs = std::max(rising(median_piece_size_mm(*looks.white), thresholds.floc_size_3plus_mm),
                                rising(looks.white->settled_share, thresholds.settled_share_3plus));
  // A clot too small for curd is a very large floc.
  const double lumps = std::max(flocs, rising(looks.white->clot_fraction, thresholds.clot_fraction_3plus));
  // Grains on the bottom tell of a granular cloud while some still hang; a bed alone may be the urine's own.
  const double granular =
      std::max(rising(grains, thresholds.granularity_2plus),
               std::min(rising(grains, some_still_hang * thresholds.granularity_2plus),
                        rising(looks.white->settled_share, thresholds.settled_share_2plus)));
  Margins margins{
      rising(veil, thresholds.veil_trace),
      falling(contrast, thresholds.print_contrast_1plus),
      granular,
      lumps,
      rising(clotted_share(*looks.white, part), thresholds.clot_fraction_4plus),
  };
  // A tube that holds no cloud on black holds nothing: a stray speck is not a precipitate. A crowd of grains
  // is one, also when they have sunk through the part they are looked for against.
  if (margins[0] < 0 && rising(grains, thresholds.granularity_2plus) < 0) {
    std::fill(margins.begin() + 1, margins.end(), std::min(margins[0], -1.0));
  }
  const Grade grade = highest_crossed(margins);
  return {grade, intensity(grade, margins), seen_words[static_cast<std::size_t>(grade)]};
}

std::vector<std::string> cloud_table() {
  return {seen_words.begin(), seen_words.end()};
}

} // namespace matula::reading
