#include "sim/matter/mixture.hpp"

#include <algorithm>

namespace matula::matter {

namespace {

void add(Population& whole, const Population& part, double share) {
  for (std::size_t i = 0; i < size_bins; ++i) {
    whole.grams[i] += share * part.grams[i];
  }
  whole.clot_g += share * part.clot_g;
}

} // namespace

Mixture empty_mixture(const Catalogue& catalogue) {
  Mixture mixture;
  mixture.mmol.assign(catalogue.species.size(), 0.0);
  mixture.populations.resize(catalogue.particles.size());
  return mixture;
}

Mixture from_bottle(const Reagent& reagent, double volume_ml, double temperature_c,
                    const Catalogue& catalogue) {
  constexpr double kg_m3_per_g_ml = 1000;
  Mixture taken = empty_mixture(catalogue);
  taken.volume_ml = volume_ml;
  taken.temperature_c = temperature_c;
  for (const auto& [id, mol_per_l] : reagent.mol_per_l) {
    taken.mmol[id] += mol_per_l * volume_ml;
  }
  for (const auto& [kind, g_per_ml] : reagent.solids_g_per_ml) {
    taken.populations.of(kind).grams.front() += g_per_ml * volume_ml;
  }
  if (reagent.powder) {
    const Powder& powder = *reagent.powder;
    const double grams = powder.g_per_ml * volume_ml;
    taken.populations.of(powder.solid).grams[powder.size_class] = grams;
    taken.volume_ml = grams / (catalogue.particles[powder.solid].solid_density_kg_m3 / kg_m3_per_g_ml);
  }
  return taken;
}

void merge(Mixture& whole, const Mixture& part) {
  const double volume_ml = whole.volume_ml + part.volume_ml;
  if (volume_ml > 0) {
    // Dilute waters: the same heat capacity a millilitre, so heat adds as volume times temperature.
    whole.temperature_c += (part.temperature_c - whole.temperature_c) * (part.volume_ml / volume_ml);
  }
  whole.volume_ml = volume_ml;
  whole.mmol.resize(std::max(whole.mmol.size(), part.mmol.size()), 0.0);
  for (std::size_t i = 0; i < part.mmol.size(); ++i) {
    whole.mmol[i] += part.mmol[i];
  }
  whole.populations.resize(std::max(whole.populations.size(), part.populations.size()));
  for (const Populations::Entry& entry : part.populations.present()) {
    if (!entry.population.empty()) {
      add(whole.populations.of(entry.kind), entry.population, 1.0);
    }
  }
}

Mixture draw(Mixture& from, double volume_ml) {
  if (volume_ml >= from.volume_ml) {
    Mixture all = from;
    from.volume_ml = 0;
    std::fill(from.mmol.begin(), from.mmol.end(), 0.0);
    from.populations.clear();
    return all;
  }
  const double share = std::max(0.0, volume_ml) / from.volume_ml;
  Mixture part;
  part.temperature_c = from.temperature_c;
  part.volume_ml = share * from.volume_ml;
  part.mmol.resize(from.mmol.size());
  part.populations.resize(from.populations.size());
  for (std::size_t i = 0; i < from.mmol.size(); ++i) {
    part.mmol[i] = share * from.mmol[i];
    from.mmol[i] -= part.mmol[i];
  }
  for (Populations::Entry& entry : from.populations.present()) {
    if (!entry.population.empty()) {
      Population& drawn = part.populations.of(entry.kind);
      add(drawn, entry.population, share);
      add(entry.population, drawn, -1.0);
    }
  }
  from.volume_ml -= part.volume_ml;
  return part;
}

double solute_mass_g(const Mixture& mixture, const Catalogue& catalogue) {
  constexpr double mol_per_mmol = 1e-3;
  double sum = 0;
  for (std::size_t i = 0; i < mixture.mmol.size() && i < catalogue.species.size(); ++i) {
    sum += mixture.mmol[i] * mol_per_mmol * catalogue.species[i].molar_mass_g_per_mol;
  }
  for (const Populations::Entry& entry : mixture.populations.present()) {
    sum += entry.population.total_g();
  }
  return sum;
}

} // namespace matula::matter
