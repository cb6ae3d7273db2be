#include "sim/bench/bottle.hpp"

#include <cmath>

namespace matula::bench {

matter::Mixture from_bottle(const matter::Reagent& reagent, double volume_ml, double temperature_c,
                            double age_days, const std::vector<BottleDecay>& decays,
                            const matter::Catalogue& catalogue) {
  matter::Mixture liquid = matter::empty_mixture(catalogue);
  liquid.volume_ml = volume_ml;
  liquid.temperature_c = temperature_c;
  for (const auto& [id, mol_per_l] : reagent.mol_per_l) {
    liquid.mmol[id] += mol_per_l * volume_ml;
  }
  for (const auto& [kind, g_per_ml] : reagent.solids_g_per_ml) {
    liquid.populations[kind].grams.front() += g_per_ml * volume_ml;
  }
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
