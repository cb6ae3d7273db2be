#pragma once

#include "sim/matter/mixture.hpp"

#include <string>
#include <utility>
#include <variant>
#include <vector>

namespace matula::reaction {

/// k(T) = k_ref exp(-Ea/R (1/T - 1/T_ref)).
struct Arrhenius {
  double k_ref = 0;               ///< Unit depends on the law: 1/s, or L/mol/s.
  double reference_c = 25;
  double activation_kj_per_mol = 0;

  [[nodiscard]] double at(double temperature_c) const;
};

/// Stoichiometric change per unit of extent: negative consumes, positive makes. Mol per mol.
using Stoichiometry = std::vector<std::pair<matter::SpeciesId, double>>;

/// rate = k(T) prod c_i^order_i, in mol/L/s; optional dependence on [OH-]^oh_order.
struct MassAction {
  Arrhenius k;
  Stoichiometry orders;
  double oh_order = 0;
};

/// rate = k(T) c_substrate, slowed as the limiting partner runs out: c_partner/(c_partner + half_mol_per_l). First order in
/// substrate, zero order in plentiful partner, first order in [OH-] relative to the reagent's own alkalinity.
struct SaturatingReduction {
  Arrhenius k;
  matter::SpeciesId substrate = 0;
  matter::SpeciesId partner = 0;
  double half_mol_per_l = 0.002;
  double reference_ph = 10;       ///< pH at which k holds; the rate follows [OH-] from there.
};

struct Reaction {
  std::string key;
  std::variant<MassAction, SaturatingReduction> law;
  Stoichiometry changes;
  std::string source;
};

/// How the solubility of a dissolved species falls, and which solid it becomes.
struct PhShape { double centre = 0; double width = 0; };

/// A species leaves solution as a solid once above its solubility, and goes back when below it.
struct Precipitation {
  std::string key;
  std::vector<std::pair<matter::SpeciesId, double>> formula; ///< Species and mol per mol of solid formed.
  matter::ParticleId solid = 0;
  std::string law;                ///< Name of the solubility law in solubility.hpp, chosen by the data row.
  std::vector<double> parameters; ///< Of that law, in the order its docstring gives.
  Arrhenius growth;               ///< Second order in the excess, L/mol/s at the reference.
  double nucleation_bin = 0;      ///< Class new solid enters.
  std::string source;
};

} // namespace matula::reaction
