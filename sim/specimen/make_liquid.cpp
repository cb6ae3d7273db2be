#include "sim/specimen/specimen.hpp"

#include "sim/matter/ph.hpp"

#include <cmath>
#include <stdexcept>

namespace matula::specimen {

namespace {

constexpr double l_per_ml = 1e-3;
constexpr double dl_per_ml = 1e-2;
constexpr double g_per_mg = 1e-3;
constexpr double body_c = 37;

matter::SpeciesId must_find(const matter::Catalogue& catalogue, const std::string& key) {
  const auto id = catalogue.find_species(key);
  if (!id) {
    throw std::invalid_argument("a specimen needs the species '" + key + "'");
  }
  return *id;
}

void dissolve(matter::Mixture& liquid, const Specimen& specimen, const matter::Catalogue& catalogue) {
  for (const auto& [key, mmol_per_l] : specimen.mmol_per_l) {
    liquid.mmol[must_find(catalogue, key)] += mmol_per_l * specimen.volume_ml * l_per_ml;
  }
  for (const auto& [key, mg_per_dl] : specimen.mg_per_dl) {
    const matter::SpeciesId id = must_find(catalogue, key);
    liquid.mmol[id] +=
        mg_per_dl * specimen.volume_ml * dl_per_ml / catalogue.species[id].molar_mass_g_per_mol;
  }
}

/// The yellow pigments, by the light they stop.
void colour(matter::Mixture& liquid, const Specimen& specimen, const matter::Catalogue& catalogue) {
  constexpr double reference_nm = 420;
  constexpr auto band =
      static_cast<std::size_t>((reference_nm - optics::first_wavelength_nm) / optics::band_step_nm);
  if (specimen.urochrome_a420 <= 0) {
    return;
  }
  const matter::SpeciesId id = must_find(catalogue, "urochrome");
  const double epsilon = catalogue.species[id].absorptivity_l_per_mol_cm[band];
  if (epsilon <= 0) {
    throw std::invalid_argument("urochrome must absorb at 420 nm");
  }
  liquid.mmol[id] += specimen.urochrome_a420 / epsilon * specimen.volume_ml;
}

void suspend(matter::Mixture& liquid, const Specimen& specimen, const matter::Catalogue& catalogue) {
  for (const auto& [key, mg_per_l] : specimen.particles_mg_per_l) {
    const auto id = catalogue.find_particle(key);
    if (!id) {
      throw std::invalid_argument("a specimen needs the particle '" + key + "'");
    }
    liquid.populations.of(*id).grams[0] += mg_per_l * g_per_mg * specimen.volume_ml * l_per_ml;
  }
}

/// Counted things: so many of one size class in a millilitre.
void count_in(matter::Mixture& liquid, const std::vector<std::pair<std::string, double>>& counts,
              double per_ml, std::size_t bin, const matter::Catalogue& catalogue) {
  for (const auto& [key, count] : counts) {
    const auto id = catalogue.find_particle(key);
    if (!id) {
      throw std::invalid_argument("a specimen needs the particle '" + key + "'");
    }
    liquid.populations.of(*id).grams[bin] +=
        count * per_ml * liquid.volume_ml * catalogue.particles[*id].bin_mass_g(bin);
  }
}

/// Strong acid's chloride or strong base's sodium until the charges balance at the wanted pH.
void titrate(matter::Mixture& liquid, double target_ph, const matter::Catalogue& catalogue) {
  const matter::SpeciesId chloride = must_find(catalogue, "chloride");
  const matter::SpeciesId sodium = must_find(catalogue, "sodium");
  const matter::Mixture passed = liquid;
  double acid_mmol = 0;
  constexpr int rounds = 12; // Each ion added changes the activities a little.
  for (int i = 0; i < rounds; ++i) {
    acid_mmol += matter::charge_excess_molar(liquid, catalogue, target_ph) * liquid.volume_ml;
    liquid = passed;
    liquid.mmol[acid_mmol > 0 ? chloride : sodium] += std::abs(acid_mmol);
  }
}

} // namespace

matter::Mixture make_liquid(const Specimen& specimen, const matter::Catalogue& catalogue) {
  matter::Mixture liquid = matter::empty_mixture(catalogue);
  liquid.volume_ml = specimen.volume_ml;
  liquid.temperature_c = specimen.life.empty() ? specimen.temperature_c : body_c;
  dissolve(liquid, specimen, catalogue);
  colour(liquid, specimen, catalogue);
  suspend(liquid, specimen, catalogue);
  constexpr double ul_per_ml = 1000;
  count_in(liquid, specimen.cells_per_ul, ul_per_ml, 0, catalogue);
  count_in(liquid, specimen.resting_per_ml, 1, 0, catalogue);
  count_in(liquid, specimen.growing_per_ml, 1, 1, catalogue); // Growing ones are twice as heavy.
  titrate(liquid, specimen.target_ph, catalogue);
  return liquid;
}

} // namespace matula::specimen
