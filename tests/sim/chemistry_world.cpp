#include "tests/sim/chemistry_world.hpp"

#include "engine/assets/readers.hpp"
#include "sim/matter/ph.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace matula::tests {

namespace {

ChemistryWorld load() {
  const std::filesystem::path chemistry = std::filesystem::path(MATULA_SOURCE_DIR) / "assets" / "chemistry";
  ChemistryWorld world;
  scenario::Problems problems;
  assets::read_chemistry(chemistry, world.catalogue, world.network, problems);
  if (!problems.empty()) {
    throw std::runtime_error(scenario::to_text(problems));
  }
  matter::prepare(world.catalogue);
  reaction::prepare(world.network, world.catalogue);
  return world;
}

template <class Id> Id found(const std::optional<Id>& id, const std::string& key) {
  if (!id) {
    throw std::runtime_error("no row called " + key);
  }
  return *id;
}

} // namespace

matter::SpeciesId ChemistryWorld::id(const std::string& key) const {
  return found(catalogue.find_species(key), key);
}

matter::ParticleId ChemistryWorld::solid(const std::string& key) const {
  return found(catalogue.find_particle(key), key);
}

const reaction::Reaction& ChemistryWorld::reaction(const std::string& key) const {
  for (const reaction::Reaction& row : network.reactions) {
    if (row.key == key) {
      return row;
    }
  }
  throw std::runtime_error("no row called " + key);
}

const ChemistryWorld& chemistry_world() {
  static const ChemistryWorld world = load();
  return world;
}

matter::Mixture solution(double volume_ml, const Amounts& mmol_per_l) {
  const ChemistryWorld& world = chemistry_world();
  matter::Mixture mixture = matter::empty_mixture(world.catalogue);
  mixture.volume_ml = volume_ml;
  mixture.temperature_c = 22;
  for (const auto& [key, mmol] : mmol_per_l) {
    mixture.mmol[world.id(key)] += mmol * volume_ml / 1000;
  }
  return mixture;
}

matter::Mixture bottle(const std::string& reagent, double volume_ml) {
  const ChemistryWorld& world = chemistry_world();
  return matter::from_bottle(*world.catalogue.find_reagent(reagent), volume_ml, 22, world.catalogue);
}

matter::Mixture urine(double volume_ml, double ph, const Amounts& extra) {
  const ChemistryWorld& world = chemistry_world();
  Amounts amounts = {{"sodium", 120},   {"potassium", 55}, {"ammonium", 30}, {"urea", 240},
                     {"creatinine", 9}, {"phosphate", 20}, {"sulphate", 16}, {"calcium", 3.3},
                     {"magnesium", 3},  {"citrate", 2},    {"urate", 2.5},   {"other_organics", 20}};
  amounts.insert(amounts.end(), extra.begin(), extra.end());
  matter::Mixture mixture = solution(volume_ml, amounts);
  for (int pass = 0; pass < 4; ++pass) { // Each addition shifts the activity a little.
    const double mmol = matter::charge_excess_molar(mixture, world.catalogue, ph) * volume_ml;
    mixture.mmol[world.id("chloride")] += std::max(0.0, mmol);
    mixture.mmol[world.id("sodium")] += std::max(0.0, -mmol);
  }
  return mixture;
}

matter::Mixture together(matter::Mixture first, const matter::Mixture& second) {
  matter::merge(first, second);
  return first;
}

void hold(matter::Mixture& mixture, double temperature_c, double seconds, double step_s, double shear_per_s) {
  const ChemistryWorld& world = chemistry_world();
  mixture.temperature_c = temperature_c;
  const int steps = static_cast<int>(std::lround(seconds / step_s));
  for (int i = 0; i < steps; ++i) {
    reaction::react(mixture, world.network, world.catalogue, step_s, shear_per_s);
  }
}

double mmol_per_l_of_g_per_dl(const std::string& species, double g_per_dl) {
  const ChemistryWorld& world = chemistry_world();
  return g_per_dl * 10 / world.catalogue.species[world.id(species)].molar_mass_g_per_mol * 1000;
}

} // namespace matula::tests
