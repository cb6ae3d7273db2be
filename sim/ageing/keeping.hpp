#pragma once

#include <vector>

namespace matula::ageing {

/// How a specimen is kept for a while. Its temperature is the mixture's own.
struct Keeping {
  bool open = true;
  double lux = 1000;     ///< Illuminance at the liquid; 0 in the dark.
  double depth_mm = 20;  ///< Of the liquid under its surface.
  bool chemistry = true; ///< Whether the reactions between dissolved substances are worked out here, too.
};

/// What has gone between the liquid and the world around it, by volatile row; positive left the liquid.
struct Gas {
  std::vector<double> to_air_mmol;          ///< Since the specimen was passed.
  std::vector<double> under_lid_mmol_per_l; ///< In the air under a closed lid, per litre of liquid.
  bool lidded = false;
  double water_mmol = 0;  ///< Taken up by reactions.
  double oxygen_mmol = 0; ///< Taken up by reactions.
};

} // namespace matula::ageing
