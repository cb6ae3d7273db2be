#include "sim/matter/tables.hpp"

#include "sim/optics/nature.hpp"

#include "sim/matter/catalogue.hpp"
#include "sim/matter/density.hpp"

#include <algorithm>
#include <cmath>

namespace matula::matter {

namespace {

/// Groups that have lost their proton in urine: a whole charge is near enough for a correction.
constexpr double urine_ph = 6.0;

bool macromolecule(const Species& species) {
  return species.buffer_groups > 1;
}

void add_ion(Tables& tables, SpeciesId id, const Species& species) {
  Tables::Ion ion{id,
                  species.protonated_charge,
                  species.buffer_groups,
                  macromolecule(species),
                  tables.groups.size(),
                  tables.groups.size()};
  for (std::size_t group = 0; group < species.pka.size(); ++group) {
    if (ion.macromolecule && group > 0 && species.pka[group] == species.pka[group - 1]) {
      ++tables.groups.back().copies;
      continue;
    }
    const double z = species.protonated_charge - static_cast<double>(group);
    tables.groups.push_back({std::exp(nature::ln10 * -species.pka[group]), species.pka_fall_per_decade,
                             ion.macromolecule ? 0 : static_cast<int>(2 * z - 1), 1});
  }
  ion.end = tables.groups.size();
  tables.ions.push_back(ion);
}

double whole_charge(const Species& species) {
  if (macromolecule(species)) {
    return 0; // A protein's charges are spread out: not a point ion.
  }
  double charge = species.protonated_charge;
  for (const double pka : species.pka) {
    charge -= pka < urine_ph ? 1 : 0;
  }
  return charge;
}

void add_weight(Tables::Weights& weights, const Species& species) {
  constexpr double reference_c = 20; // where the catalogue's volumes hold
  constexpr double g_ml_per_kg_m3 = 1e-3;
  const double charge = whole_charge(species);
  const double volume = species.apparent_volume_ml_per_mol;
  weights.lift_g_per_mol.push_back(species.molar_mass_g_per_mol -
                                   volume * water_density_kg_m3(reference_c) * g_ml_per_kg_m3);
  weights.charge_squared.push_back(charge * charge);
  weights.volume_ml_per_mol.push_back(volume);
}

Tables::Base base(const Catalogue& catalogue, SpeciesId id) {
  const double pka = catalogue.species[id].pka.front();
  Tables::Base row{id, catalogue.species[id].free_base_volume_ml_per_mol, {}};
  for (const Species& species : catalogue.species) {
    const auto lost = std::lower_bound(species.pka.begin(), species.pka.end(), pka) - species.pka.begin();
    row.charge.push_back(macromolecule(species) ? 0 : species.protonated_charge - static_cast<double>(lost));
  }
  return row;
}

} // namespace

Tables make_tables(const Catalogue& catalogue) {
  Tables tables;
  for (SpeciesId id = 0; id < catalogue.species.size(); ++id) {
    const Species& species = catalogue.species[id];
    if (!species.pka.empty() || species.protonated_charge != 0) {
      add_ion(tables, id, species);
    }
    add_weight(tables.weights, species);
    if (species.free_base_volume_ml_per_mol > 0) {
      tables.bases.push_back(base(catalogue, id));
    }
  }
  return tables;
}

const Tables& tables_of(const Catalogue& catalogue, std::optional<Tables>& spare) {
  if (catalogue.tables && catalogue.tables->weights.lift_g_per_mol.size() == catalogue.species.size()) {
    return *catalogue.tables;
  }
  return spare.emplace(make_tables(catalogue));
}

void prepare(Catalogue& catalogue) {
  catalogue.tables = std::make_shared<const Tables>(make_tables(catalogue));
}

} // namespace matula::matter
