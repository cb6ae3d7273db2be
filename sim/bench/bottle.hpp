#pragma once

#include "sim/matter/catalogue.hpp"
#include "sim/matter/mixture.hpp"

#include <map>
#include <string>
#include <utility>
#include <vector>

namespace matula::bench {

/// One way in which a bottle on the shelf goes off: a substance falls away with a half-life and may leave
/// another behind in the liquid. What it leaves as gas or as a crust is simply gone.
struct BottleDecay {
  std::string reagent;
  matter::SpeciesId loses = 0;
  double half_life_days = 0;
  std::vector<std::pair<matter::SpeciesId, double>> gains; ///< mol made for each mol lost.
  std::string source;
};

/// Days since each bottle was opened, by reagent key; a bottle not named is fresh.
using BottleAges = std::map<std::string, double>;

/// What comes out of a bottle of this age, at `temperature_c`.
[[nodiscard]] matter::Mixture from_bottle(const matter::Reagent& reagent, double volume_ml,
                                          double temperature_c, double age_days,
                                          const std::vector<BottleDecay>& decays,
                                          const matter::Catalogue& catalogue);

} // namespace matula::bench
