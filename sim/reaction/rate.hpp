#pragma once

#include "sim/reaction/reaction.hpp"

namespace matula::reaction {

/// Rate of the law, mol/L/s, never negative.
[[nodiscard]] double rate_molar_per_s(const Reaction& reaction, const matter::Mixture& mixture, double ph,
                                      const Exposure& exposure = {});

/// The rate constant of the law at a temperature.
[[nodiscard]] double constant_at(const Reaction& reaction, double temperature_c);

/// Rate of the law in full light and air with a rate constant that is known already.
[[nodiscard]] double rate_with(const Reaction& reaction, double constant, const matter::Mixture& mixture,
                               double ph);

/// Factor that light and air put on the row's rate.
[[nodiscard]] double exposed_share(const Reaction& reaction, const Exposure& exposure);

/// Greatest extent, mol/L, before the scarcest thing used up is gone.
[[nodiscard]] double largest_extent_molar(const Reaction& reaction, const matter::Mixture& mixture);

/// Whether the law looks at the pH.
[[nodiscard]] bool needs_ph(const Reaction& reaction);

/// Applies `extent_molar` (mol/L) to the amounts; an amount that rounding would take below zero stays at
/// zero.
void apply(const Reaction& reaction, double extent_molar, matter::Mixture& mixture);

} // namespace matula::reaction
