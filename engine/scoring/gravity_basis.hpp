#pragma once

#include "engine/scoring/ledgers.hpp"
#include "engine/scoring/slips.hpp"

#include <optional>

namespace matula::scoring {

/// What the learner's corrections rest on: own entries first, then what the bench showed, then the specimen.
[[nodiscard]] GravityBasis gravity_basis(const Case& marked);

[[nodiscard]] GravityLines gravity_lines(const Case& marked);

/// Change of the float's reading from temperature alone, by the liquid's and the glass's expansion: what must
/// be added to a reading at the liquid's temperature to get the one at the float's. Density by Kell 1975 and
/// apparent volumes.
[[nodiscard]] double physical_temperature_correction(const FloatSeen& seen,
                                                     const instrument::Urinometer& urinometer,
                                                     const matter::Catalogue& catalogue);

/// Relative density of the specimen at the float's temperature, free of protein and sugar. Nothing without a
/// float.
[[nodiscard]] std::optional<double> true_gravity(const Case& marked);

} // namespace matula::scoring
