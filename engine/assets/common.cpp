#include "engine/assets/readers.hpp"
#include "engine/strict/nearest.hpp"

namespace matula::assets {

void close(strict::File& file, scenario::Problems& problems) {
  const scenario::Problems found = file.finish();
  problems.insert(problems.end(), found.begin(), found.end());
}

reaction::Stoichiometry read_amounts(const strict::Table& table, const matter::Catalogue& catalogue,
                                     const strict::Range& range) {
  reaction::Stoichiometry amounts;
  for (const std::string& key : table.keys()) {
    const double amount = table.number(key, range);
    const std::optional<matter::SpeciesId> id = catalogue.find_species(key);
    if (!id) {
      table.complain(key, "a species; " + strict::suggestion(key, keys_of(catalogue.species)));
      continue;
    }
    amounts.emplace_back(*id, amount);
  }
  return amounts;
}

matter::SpeciesId read_species_key(const strict::Table& table, const std::string& key,
                                   const matter::Catalogue& catalogue) {
  const std::string name = table.text(key);
  const std::optional<matter::SpeciesId> id = catalogue.find_species(name);
  if (!id && !name.empty()) {
    table.complain(key, "a species; " + strict::suggestion(name, keys_of(catalogue.species)));
  }
  return id.value_or(0);
}

matter::ParticleId read_particle_key(const strict::Table& table, const std::string& key,
                                     const matter::Catalogue& catalogue) {
  const std::string name = table.text(key);
  const std::optional<matter::ParticleId> id = catalogue.find_particle(name);
  if (!id && !name.empty()) {
    table.complain(key, "a particle; " + strict::suggestion(name, keys_of(catalogue.particles)));
  }
  return id.value_or(0);
}

reaction::Arrhenius read_arrhenius(const strict::Table& table) {
  reaction::Arrhenius k;
  k.k_ref = table.number("k", {0, 1e12, "1/s or L/mol/s"});
  k.reference_c = table.number("reference_c", {0, 150, "degrees C"});
  k.activation_kj_per_mol = table.number("activation_kj_per_mol", {-300, 600, "kJ/mol"});
  return k;
}

} // namespace matula::assets
