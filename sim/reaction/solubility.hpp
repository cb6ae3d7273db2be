#pragma once

#include "sim/reaction/reaction.hpp"

#include <string_view>

namespace matula::reaction {

/// What the laws of one instant look at.
struct Conditions {
  double temperature_c = 25;
  double ph = 7;
  double log_gamma = 0; ///< log10 activity coefficient of a singly charged ion.
};

/// The laws, by the names below.
enum class Solubility { oxide, acid_protein, isoelectric, hot_window, weak_acid, ion_product, carried };

/// The law of a name; weak_acid for a name no law has.
[[nodiscard]] Solubility solubility_named(std::string_view law);

/// A row with what stays the same while its portion keeps its temperature.
struct SolidLaw {
  const Precipitation* row = nullptr;
  Solubility law = Solubility::weak_acid;
  double warm = 1;      ///< weak_acid: solubility at the temperature over that at 25 °C.
  double log_limit = 0; ///< ion_product: ln of the largest product at the temperature.
};

[[nodiscard]] SolidLaw solid_law(const Precipitation& row, Solubility law, double temperature_c);

/// Number of parameters a law takes; negative for a name no law has. The names:
///
/// "oxide"          [s0, ph0]: s0 (1 + 10^(ph0 - pH)) mol/L of the first species; acid takes the solid up
/// again. "acid_protein"   [s0, half, ph_half, steepness, agent]: s0 (1 + 10^(steepness (pH - ph_half))) (1 +
/// half/c_agent) mol/L;
///                  `agent` is the species number of the precipitant, `half` its concentration of half
///                  effect, mol/L.
/// "isoelectric"    [s0, centre, width]: s0 10^(((pH - centre)/width)^2) mol/L.
/// "hot_window"     [s0, t_least, width_below, width_above, centre, width]: s0 10^(((T - t_least)/w)^4 + ((pH
/// - centre)/width)^2)
///                  with w below or above t_least, °C.
/// "weak_acid"      [s0, pka, enthalpy]: s0 (1 + 10^(pH - pka)), s0 at 25 °C, rising with kJ/mol of solution
///                  (van 't Hoff).
/// "ion_product"    [product, enthalpy, heat_capacity, lost_1, lost_2 ...]: the product of the concentrations
///                  of the formula's species, each in the form that has lost that many protons (-1: the
///                  total), may reach `product` (mol/L)^n at 25 °C; it changes with the enthalpy of solution
///                  at 25 °C, kJ/mol, and with how that grows, kJ/mol/K.
/// "carried"        [strength, room, pka, carrier]: held on the grains of another solid, particle number
///                  `carrier`, by Langmuir's law: the base of constant `pka` holds with `strength` L/mol to
///                  `room` mol on a gram.
[[nodiscard]] int parameter_count(std::string_view law, std::size_t formula_length);

/// Whether the solid could form at any pH at all: false saves working out the pH.
[[nodiscard]] bool may_form(const SolidLaw& of, const matter::Mixture& mixture);

/// Mol/L of solid that must form (positive) or dissolve (negative, never beyond what `solid_molar` offers)
/// for the solution to rest with its solid.
[[nodiscard]] double distance_to_rest(const SolidLaw& of, const matter::Mixture& mixture,
                                      const matter::Catalogue& catalogue, const Conditions& now,
                                      double solid_molar);

/// The same of a row that nobody has looked up.
[[nodiscard]] double distance_to_rest(const Precipitation& row, const matter::Mixture& mixture,
                                      const matter::Catalogue& catalogue, const Conditions& now,
                                      double solid_molar);

} // namespace matula::reaction
