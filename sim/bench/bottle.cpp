#include "sim/bench/bottle.hpp"

#include <cmath>

namespace matula::bench {

matter::Mixture from_bottle(const matter::Reagent& reagent, double volume_ml, double temperature_c,
                            double age_days, const std::vector<BottleDecay>& decays,
                            const matter::Catalogue& catalogue) {
  matter::Mixture liquid = matter::from_bottle(reagent, volume_ml, temperature_c, catalogue);
  for (const BottleDecay& decay : decays) {
    if (decay.reagent != reagent.key || !(age_days > 0)) {
      continue;
    }
    const double lost = liquid.mmol[decay.loses] * (1 - std::exp2(-age_days / decay.half_life_days));
    liquid.mmol[decay.loses] -= lost;
    for (const auto& [id, count] : decay.gains) {
      liquid.mmol[id] += count * lost;
    }
  }
  return liquid;
}

} // namespace matula::bench
