#pragma once

#include "sim/matter/mixture.hpp"

namespace matula::matter {

/// pH at which the charges of all dissolved species sum to zero, searched in 0..14. Activity is taken as
/// concentration except for the Davies correction at the mixture's ionic strength (held at 0.5 mol/L above
/// that, where Davies ends). Constants are those of 25 °C at every temperature. An empty mixture has pH 7.
[[nodiscard]] double ph(const Mixture& mixture, const Catalogue& catalogue);

struct Acidity {
  double ph = 7;
  double log_gamma = 0; ///< log10 activity coefficient of a singly charged ion (Davies).
};

/// The same pH with the activity coefficient that belongs to it.
[[nodiscard]] Acidity acidity(const Mixture& mixture, const Catalogue& catalogue);

/// The same, searched from an answer that is known to be near: for a solution that changes a little at a
/// time. What is left unsettled changes from call to call: a solver that asks for more digits than
/// `log_gamma_tolerance` leaves would take it for a law.
[[nodiscard]] Acidity acidity(const Mixture& mixture, const Catalogue& catalogue, const Acidity& near,
                              double log_gamma_tolerance = 1e-6);

/// How the charge per litre (mol/L) falls with the pH at a known acidity, never positive: minus the buffer
/// capacity.
[[nodiscard]] double charge_slope_molar(const Mixture& mixture, const Catalogue& catalogue,
                                        const Acidity& acidity);

/// Mean charge of one molecule of `species` with the activity coefficient of the solution.
[[nodiscard]] double mean_charge(const Species& species, const Acidity& acidity);

/// Mean charge of one molecule of `species` at `ph`, without activity correction.
[[nodiscard]] double mean_charge(const Species& species, double ph);

/// Charge per litre (mol/L, positive when cations exceed anions) the mixture would carry at `ph`: what strong
/// acid's anion (or, when negative, strong base's cation) must be added for the mixture to rest at that pH.
[[nodiscard]] double charge_excess_molar(const Mixture& mixture, const Catalogue& catalogue, double ph);

/// mol/L of the volatile form of a smelling species at `ph`, as its row's odour_form says.
[[nodiscard]] double odorous_molar(const Mixture& mixture, const Catalogue& catalogue, SpeciesId id,
                                   double ph);

/// Fraction of `species` that has lost exactly `lost` protons at `ph`, 0..1, at activity coefficient
/// 10^log_gamma of a singly charged ion. For species with one copy of their groups.
[[nodiscard]] double form_fraction(const Species& species, std::size_t lost, double ph, double log_gamma = 0);

/// log10 of the activity coefficient of a singly charged ion in the mixture (Davies, 25 °C); 0 when empty.
[[nodiscard]] double log_gamma_1(const Mixture& mixture, const Catalogue& catalogue, double ph);

} // namespace matula::matter
