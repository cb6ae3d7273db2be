#pragma once

#include "engine/assets/world.hpp"
#include "sim/matter/density.hpp"

#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

namespace matula::test {

/// Species of the shipped assets.
inline const matter::Catalogue& catalogue() {
  static const matter::Catalogue loaded = [] {
    scenario::Problems problems;
    matter::Catalogue read = assets::load_catalogue(std::string(MATULA_SOURCE_DIR) + "/assets", problems);
    if (!problems.empty()) {
      throw std::runtime_error(problems.front().file + ": " + problems.front().found);
    }
    return read;
  }();
  return loaded;
}

/// One litre (at 20 °C) of `mol_per_l` of a salt or a sugar, given by its ions.
inline matter::Mixture solution(const std::vector<std::pair<std::string, double>>& mol_per_l,
                                double temperature_c = 20) {
  matter::Mixture mixture = matter::empty_mixture(catalogue());
  mixture.volume_ml = 1000;
  mixture.temperature_c = temperature_c;
  for (const auto& [key, mol] : mol_per_l) {
    mixture.mmol[catalogue().find_species(key).value()] += 1000 * mol;
  }
  return mixture;
}

/// The same from a mass per cent and the printed density (g/mL) that turns it into mol/L.
inline matter::Mixture by_mass(double per_cent, double g_ml, double molar_mass,
                               std::vector<std::pair<std::string, double>> ions) {
  for (auto& [key, count] : ions) {
    count *= per_cent * 10 * g_ml / molar_mass;
  }
  return solution(ions);
}

} // namespace matula::test
