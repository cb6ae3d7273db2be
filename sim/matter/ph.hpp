#pragma once

#include "sim/matter/mixture.hpp"

namespace matula::matter {

/// pH at which the charges of all dissolved species sum to zero, searched in 0..14. Activity is taken as concentration
/// except for the Davies correction at the mixture's ionic strength. An empty mixture has pH 7.
[[nodiscard]] double ph(const Mixture& mixture, const Catalogue& catalogue);

/// Mean charge of one molecule of `species` at `ph`.
[[nodiscard]] double mean_charge(const Species& species, double ph);

} // namespace matula::matter
