#pragma once

#include "sim/reaction/reaction.hpp"

namespace matula::reaction {

/// Whether the row's law looks at the pH.
[[nodiscard]] bool needs_ph(const Breakdown& row);

/// Share of the particles that fall apart or die in a second, 1/s at first, never negative.
[[nodiscard]] double breakdown_per_s(const Breakdown& row, const matter::Mixture& mixture,
                                     const matter::Catalogue& catalogue, double ph);

/// Lets them fall apart for `seconds` at `per_s`: what they hold goes into solution, or they become another
/// kind. Once less than a thousandth of one particle would be left in the portion, none is.
void break_down(const Breakdown& row, matter::Mixture& mixture, const matter::Catalogue& catalogue,
                double per_s, double seconds);

} // namespace matula::reaction
