#pragma once

#include "sim/appearance/appearance.hpp"

#include <array>
#include <optional>
#include <string>
#include <vector>

namespace matula::reading {

/// The trade's ordinal scale.
enum class Grade { Negative, Trace, OnePlus, TwoPlus, ThreePlus, FourPlus };
inline constexpr std::size_t grade_count = 6;

/// "negative", "trace", "1+", "2+", "3+", "4+".
[[nodiscard]] std::string to_word(Grade grade);
[[nodiscard]] std::optional<Grade> grade_from_word(const std::string& word);

/// Which words apply to a tube: how cloud is graded after heat, after acid, and how copper's colours are.
enum class Scale { HeatCloud, AcidCloud, CopperColour };

/// Thresholds on what the eye sees; every row comes from assets/reading with its source.
struct Thresholds;

/// A grade with the continuous intensity it was read from: 0.5 is the negative/trace line, 4.5 the 3+/4+ line.
struct GradeReading {
  Grade grade = Grade::Negative;
  double intensity = 0;
  std::string seen;               ///< What was seen, in the trade's words.
};

/// Grades a tube from its looks alone: `white`, `black` and `printed` are the same tube against the three cards.
struct Looks {
  const appearance::Appearance* white = nullptr;
  const appearance::Appearance* black = nullptr;
  const appearance::Appearance* printed = nullptr;
};

[[nodiscard]] GradeReading read_grade(Scale scale, const Looks& looks, const Thresholds& thresholds);

/// "colourless", "straw", "yellow", "amber", "orange", "red", "brown", "black" ... of the specimen in its jar.
[[nodiscard]] std::string read_colour(const appearance::Appearance& white, const Thresholds& thresholds);

/// "clear", "hazy", "cloudy", "turbid".
[[nodiscard]] std::string read_clarity(const Looks& looks, const Thresholds& thresholds);

/// Rows of the thresholds file; see assets/reading/thresholds.toml.
struct NamedColour {
  std::string word;
  optics::Lab centre;             ///< D65.
};
struct Thresholds {
  // Cloud, shared by heat and acid: first match from the top.
  double clot_fraction_4plus = 0.4;
  double settled_share_3plus = 0.5;
  double floc_size_3plus_mm = 1.0;
  double granularity_2plus = 0.05;
  double print_contrast_1plus = 0.45;
  double weber_contrast_trace = 0.02;
  // Copper: hue angle and chroma lines in CIELAB of the shaken tube, negative to 4+.
  std::array<double, 5> copper_hue_deg{};
  double copper_opacity_1plus = 0.5;
  std::vector<NamedColour> urine_colours;
  std::array<double, 3> clarity_contrast{};   ///< Print contrast lines: clear|hazy|cloudy|turbid.
};

} // namespace matula::reading
