#pragma once

#include <string>
#include <vector>

namespace matula::column {

/// A line on the glass with what is written beside it.
struct GlassMark {
  std::string label;    ///< "U", or a number where the vessel has a scale.
  double height_mm = 0; ///< Above the inside bottom.
};

/// Inside dimensions of a glass vessel: a cylinder on a hemispherical or flat bottom.
struct VesselShape {
  std::string key; ///< "test_tube", "urinometer_jar", "specimen_cup"
  double inner_diameter_mm = 14;
  double height_mm = 150;
  double wall_mm = 1;
  bool round_bottom = true;
  double capacity_ml = 20;
  std::vector<GlassMark> marks; ///< Lines on the glass, from the bottom up.

  /// Height of the surface above the inside bottom for a filling of `volume_ml`.
  [[nodiscard]] double level_mm(double volume_ml) const;
};

} // namespace matula::column
