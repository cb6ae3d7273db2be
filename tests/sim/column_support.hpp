#pragma once

#include "sim/column/column.hpp"

#include <cmath>

namespace column_support {

using namespace matula;

inline constexpr matter::SpeciesId salt = 0;
inline constexpr matter::SpeciesId protein = 1;
inline constexpr matter::ParticleId flocs = 0;
inline constexpr matter::ParticleId grains = 1;

/// A salt, a protein that falls out, sticky flocs and grains that only settle.
inline matter::Catalogue small_catalogue() {
  matter::Catalogue catalogue;
  matter::Species s;
  s.key = "salt";
  s.molar_mass_g_per_mol = 58.4;
  s.apparent_volume_ml_per_mol = 17.6;
  catalogue.species.push_back(s);
  s.key = "protein";
  s.molar_mass_g_per_mol = 66500;
  s.apparent_volume_ml_per_mol = 48745;
  catalogue.species.push_back(s);
  matter::ParticleKind k;
  k.key = "flocs";
  k.fractal_dimension = 2.1;
  k.core_radius_m = 3e-5;
  k.shear_efficiency = 4;
  k.settling_efficiency = 0.05;
  k.gel_volume_fraction = 0.26;
  catalogue.particles.push_back(k);
  matter::ParticleKind g;
  g.key = "grains";
  g.primary_radius_m = 4e-6;
  g.fractal_dimension = 3;
  g.core_radius_m = 1e-3;
  g.solid_density_kg_m3 = 1100;
  g.brownian_efficiency = 0;
  g.shear_efficiency = 0;
  g.settling_efficiency = 0;
  catalogue.particles.push_back(g);
  return catalogue;
}

/// The protein leaves solution above 3 mg/dL, at any pH.
inline column::Chemistry small_chemistry(const matter::Catalogue& catalogue) {
  column::Chemistry chemistry;
  chemistry.catalogue = &catalogue;
  reaction::Precipitation row;
  row.key = "protein_falls_out";
  row.formula = {{protein, 1.0}};
  row.solid = flocs;
  row.law = "isoelectric";
  row.parameters = {4.5e-7, 7, 1e6};
  row.growth = {8650, 25, 0};
  chemistry.precipitations.push_back(row);
  column::prepare(chemistry);
  return chemistry;
}

inline matter::Mixture liquid(const matter::Catalogue& catalogue, double volume_ml, double temperature_c,
                              double salt_molar = 0.15, double protein_mg_per_dl = 0) {
  matter::Mixture m = matter::empty_mixture(catalogue);
  m.volume_ml = volume_ml;
  m.temperature_c = temperature_c;
  m.mmol[salt] = salt_molar * volume_ml;
  m.mmol[protein] = protein_mg_per_dl * 1e-2 / 66500 * volume_ml;
  return m;
}

inline column::Column tube_with(const matter::Catalogue& catalogue, const matter::Mixture& what) {
  column::Column tube = column::empty_column(column::VesselShape{}, catalogue);
  column::pour_in(tube, what, false, catalogue);
  return tube;
}

inline bool nothing_negative(const matter::Mixture& m) {
  bool fine = m.volume_ml >= 0 && std::isfinite(m.temperature_c);
  for (const double amount : m.mmol) {
    fine = fine && amount >= 0;
  }
  for (const auto& [kind, p] : m.populations.present()) {
    for (const double grams : p.grams) {
      fine = fine && grams >= 0;
    }
    fine = fine && p.clot_g >= 0;
  }
  return fine;
}

inline bool nothing_negative(const column::Column& c) {
  bool fine = nothing_negative(c.sediment);
  for (const matter::Mixture& layer : c.layers) {
    fine = fine && nothing_negative(layer);
  }
  return fine;
}

/// Mass-weighted mean of ln(radius in m) over the suspended and settled clusters.
inline double mean_log_radius(const column::Column& c, const matter::Catalogue& catalogue,
                              matter::ParticleId id) {
  const matter::Mixture all = column::whole(c, catalogue);
  double sum = 0;
  for (std::size_t i = 0; i < matter::size_bins; ++i) {
    sum += all.populations[id].grams[i] * std::log(catalogue.particles[id].bin_radius_m(i));
  }
  return sum / all.populations[id].suspended_g();
}

} // namespace column_support
