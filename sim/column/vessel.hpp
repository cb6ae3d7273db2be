#pragma once

#include <string>

namespace matula::column {

/// Inside dimensions of a glass vessel: a cylinder on a hemispherical or flat bottom.
struct VesselShape {
  std::string key; ///< "test_tube", "urinometer_jar", "specimen_cup"
  double inner_diameter_mm = 14;
  double height_mm = 150;
  double wall_mm = 1;
  bool round_bottom = true;
  double capacity_ml = 20;

  /// Height of the surface above the inside bottom for a filling of `volume_ml`.
  [[nodiscard]] double level_mm(double volume_ml) const;
};

} // namespace matula::column
