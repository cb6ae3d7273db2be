#include "sim/reading/reference_reader.hpp"

#include "sim/reading/cloud.hpp"
#include "sim/reading/cloud_ring.hpp"
#include "sim/reading/colour_strength.hpp"
#include "sim/reading/copper.hpp"
#include "sim/reading/observables.hpp"
#include "sim/reading/powder.hpp"

#include <array>
#include <limits>

namespace matula::reading {

namespace {
constexpr optics::Xyz d65_white{0.95047, 1.0, 1.08883};
constexpr Stretch middle{0.2, 0.8};
} // namespace

GradeReading read_grade(const Scale& scale, const Looks& looks, const Thresholds& thresholds) {
  if (looks.white->level_mm <= 0) {
    return {Grade::Negative, 0, "an empty tube"};
  }
  switch (scale.kind) {
  case ScaleKind::HeatCloud:
    return read_cloud(true, looks, thresholds);
  case ScaleKind::AcidCloud:
    return read_cloud(false, looks, thresholds);
  case ScaleKind::CopperColour:
    return read_copper(looks, thresholds);
  case ScaleKind::Colour:
    return read_strength(looks, scale.colour);
  case ScaleKind::Paper:
    return {}; // A paper is no vessel; see paper.hpp.
  case ScaleKind::Powder:
    return read_powder(looks, scale.powder);
  case ScaleKind::CloudRing:
    return read_cloud_ring(looks, scale.colour, thresholds);
  }
  return {};
}

std::string read_colour(const appearance::Appearance& white, const Thresholds& thresholds) {
  const optics::Lab seen = optics::to_lab(mean_colour_on_white(white, middle), d65_white);
  std::string best;
  double nearest = std::numeric_limits<double>::max();
  for (const NamedColour& named : thresholds.urine_colours) {
    const double distance = optics::ciede2000(seen, named.centre);
    if (distance < nearest) {
      nearest = distance;
      best = named.word;
    }
  }
  return best;
}

std::string read_clarity(const appearance::Appearance& printed, const Thresholds& thresholds) {
  static constexpr std::array<const char*, 4> words{"clear", "hazy", "cloudy", "turbid"};
  const double contrast = mean_print_contrast(printed, middle);
  std::size_t word = 0;
  while (word < thresholds.clarity_contrast.size() && contrast < thresholds.clarity_contrast[word]) {
    ++word;
  }
  return words[word];
}

} // namespace matula::reading
