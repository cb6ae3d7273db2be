#pragma once

#include "sim/matter/mixture.hpp"

#include <string>
#include <utility>
#include <vector>

namespace matula::specimen {

/// One stretch of the way from the patient to the bench.
struct Leg {
  double hours = 0;
  double temperature_c = 22; ///< Of what is round the container.
  bool open = true;
  double lux = 1000; ///< 0 in the dark.
};

/// Something added to the container on the way.
struct Preservative {
  double at_hours = 0; ///< After the specimen was passed.
  std::string reagent; ///< Key of the bottle.
  double ml_per_100_ml = 0;
};

/// What a patient passed, in physical units: the hidden truth of a case.
struct Specimen {
  double volume_ml = 50;
  double temperature_c = 22;
  double target_ph = 6.0;                                 ///< Set by titrating with strong acid or base.
  std::vector<std::pair<std::string, double>> mmol_per_l; ///< By species key.
  std::vector<std::pair<std::string, double>> mg_per_dl;  ///< By species key: proteins, sugars, pigments.
  std::vector<std::pair<std::string, double>>
      particles_mg_per_l;      ///< By particle key: cells, urate, phosphate.
  double urochrome_a420 = 0.2; ///< Absorbance per cm at 420 nm of the yellow pigments.
  double stood_hours = 0;      ///< In an open, lit container before reception.
  std::vector<std::pair<std::string, double>> cells_per_ul;   ///< By particle key: cells and casts.
  std::vector<std::pair<std::string, double>> growing_per_ml; ///< Organisms of an infection, by particle key.
  std::vector<std::pair<std::string, double>> resting_per_ml; ///< Organisms of the skin and the cup.
  std::vector<Leg> life; ///< From the void on, before it stood; then it comes from the body, at 37 °C.
  std::vector<Preservative> preservatives;
};

/// The liquid in the container when it was passed: charge-balanced with chloride (or sodium) to reach the
/// target pH, particles as single grains. Its standing is left to the bench, which lets the filled cup live
/// through it. Throws std::invalid_argument for a substance the catalogue does not hold.
[[nodiscard]] matter::Mixture make_liquid(const Specimen& specimen, const matter::Catalogue& catalogue);

} // namespace matula::specimen
