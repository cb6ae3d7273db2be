#pragma once

#include "sim/matter/mixture.hpp"

#include <optional>
#include <string>
#include <utility>
#include <variant>
#include <vector>

namespace matula::reaction {

/// k(T) = k_ref exp(-Ea/R (1/T - 1/T_ref)).
struct Arrhenius {
  double k_ref = 0; ///< Unit depends on the law: 1/s, or L/mol/s.
  double reference_c = 25;
  double activation_kj_per_mol = 0;

  [[nodiscard]] double at(double temperature_c) const;
};

/// Stoichiometric change per unit of extent: negative consumes, positive makes. Mol per mol.
using Stoichiometry = std::vector<std::pair<matter::SpeciesId, double>>;

/// rate = k(T) prod c_i^order_i f 10^(oh_order (pH - reference_ph)), in mol/L/s. A negative oh_order makes
/// acid the helper; f is the share of the acid or the base of one constant, 1 where neither is named.
struct MassAction {
  Arrhenius k;
  Stoichiometry orders;           ///< Species and order of each; positive.
  std::optional<double> acid_pka; ///< Only the acid of this constant takes part.
  std::optional<double> base_pka; ///< Only the base of this constant takes part.
  double oh_order = 0;
  double reference_ph = 14; ///< pH at which k holds; 14 makes k that of 1 mol/L hydroxide.
  // What an enzyme, or any catalyst that can be filled, adds to the law; each is left out when empty.
  Stoichiometry saturation; ///< Species and half mol/L: times c/(c + half), as Michaelis and Menten.
  Stoichiometry inhibitors; ///< Species and half mol/L: times half/(half + c), not competing.
};

/// rate = k(T) c_substrate, slowed as the limiting partner runs out: c_partner/(c_partner + half_mol_per_l).
/// First order in substrate, zero order in plentiful partner, first order in [OH-] relative to the reagent's
/// own alkalinity. Sugars reduce alkaline copper so because their enolisation sets the pace.
struct SaturatingReduction {
  Arrhenius k;
  matter::SpeciesId substrate = 0;
  matter::SpeciesId partner = 0;
  double half_mol_per_l = 0.002;
  double reference_ph = 10; ///< pH at which k holds; the rate follows [OH-] from there.
};

/// What reaches a portion from outside.
struct Exposure {
  double light = 1; ///< Illuminance in units of the 1000 lx at which rows that need light are given.
  double air = 1;   ///< 0 shut out .. 1 open: factor on rows that take oxygen.
};

struct Reaction {
  std::string key;
  std::variant<MassAction, SaturatingReduction> law;
  Stoichiometry changes;
  double water = 0;  ///< Mol of water taken up per unit of extent; negative when water is made.
  double oxygen = 0; ///< Mol of O2 taken from the air per unit of extent.
  /// Share of the rate that goes with the light; the rest goes on in the dark. 0..1.
  double light_share = 0;
  std::string source;
};

/// A species leaves solution as a solid once above its solubility, and goes back when below it.
struct Precipitation {
  std::string key;
  std::vector<std::pair<matter::SpeciesId, double>> formula; ///< Species and mol per mol of solid formed.
  matter::ParticleId solid = 0;
  std::string law;                ///< Name of the solubility law in solubility.hpp, chosen by the data row.
  std::vector<double> parameters; ///< Of that law, in the order its docstring gives.
  Arrhenius growth;               ///< Second order in the excess, L/mol/s at the reference.
  double nucleation_bin = 0;      ///< Class new particles enter.
  /// Particles per m3 wanted for each mol/m3/s of solid formed (a burst of nuclei in proportion to the rate
  /// of formation and to the share that the excess has of excess and solid together). New particles are made
  /// only up to that number; the rest of the new solid grows on the particles there are. 0: all new solid is
  /// new particles.
  double nuclei_s_per_mol = 0;
  double begins_above = 1;        ///< Times its solubility, where there is none of the solid yet.
  double stir_gain_s = 0;         ///< Growth is faster by 1 + stir_gain_s * shear rate.
  double dissolving_per_s = 0.05; ///< First-order return to rest when the solution is short of it.
  bool dissolves = true;          ///< Whether this row also takes the solid back into solution.
  double water = 0;   ///< Mol of water built into one mol of solid; negative when water is given off.
  double protons = 0; ///< Mol of H+ left behind when one mol of solid forms.
  std::string source;
};

/// Something dissolved that breaks cells: per_s c^power/(c^power + half^power).
struct Breaker {
  matter::SpeciesId species = 0;
  double per_s = 0;
  double half_mol_per_l = 1;
  double power = 1;
  bool acid_form = false; ///< Only the form with every proton counts: it passes the cell's skin.
};

/// Cells that fall apart, or organisms that die, wherever they hang: first order, the causes added up.
struct Breakdown {
  std::string key;
  matter::ParticleId kind = 0;
  /// Heat by the law of sterilising: a tenth is left after heat_d_s at heat_at_c, ten times sooner each
  /// heat_z_k. heat_d_s 0: no heat harms it.
  double heat_d_s = 0;
  double heat_at_c = 60;
  double heat_z_k = 5;
  double acid_per_s = 0; ///< Strong acid: per_s/(1 + 10^(2 (pH - acid_ph))).
  double acid_ph = 2;
  /// Thin liquid bursts cells: per_s/(1 + (c/half)^power), c all that is dissolved but what passes the skin.
  double thin_per_s = 0;
  double thin_half_mol_per_l = 0.1;
  double thin_power = 10;
  std::vector<matter::SpeciesId> passes_skin;
  std::vector<Breaker> breakers;
  Stoichiometry fixed_by; ///< Species and half mol/L: times half^2/(half^2 + c^2); fixed cells keep.
  std::vector<std::pair<matter::SpeciesId, double>> releases; ///< Grams from a gram; the rest is water.
  std::optional<matter::ParticleId> becomes; ///< All of it becomes this kind, of the same size classes.
  std::string source;
};

} // namespace matula::reaction
