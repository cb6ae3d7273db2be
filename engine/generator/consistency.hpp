#pragma once

#include "engine/generator/pattern.hpp"

namespace matula::generator {

/// What follows from a composition.
struct Derived {
  double chloride_mmol_per_l = 0;     ///< That balances the charges at the wanted pH.
  double added_sodium_mmol_per_l = 0; ///< When it takes base instead of acid: a sign of a wrong composition.
  double ph = 0;                      ///< Of the liquid as made.
  double gravity = 1;                 ///< 20/20.
  double osmolality = 0;              ///< mOsm/kg
  double osmolality_per_gravity = 0;
};

[[nodiscard]] Derived derive(const specimen::Specimen& specimen, const matter::Catalogue& catalogue);

/// Chloride by the balance printed for bench use: Na + K + NH4 + 2 Ca + 2 Mg less bicarbonate, 2 sulphate,
/// phosphate (1 + f) with f = 1/(1 + 10^(6.8 - pH)), organic, urate and keto anions; mmol/L, may be negative.
[[nodiscard]] double chloride_by_balance(const specimen::Specimen& specimen,
                                         const matter::Catalogue& catalogue);

/// Why a composition cannot be a patient's; empty when it can.
[[nodiscard]] std::string inconsistent(const Derived& derived, const specimen::Specimen& specimen,
                                       const Bounds& bounds);

} // namespace matula::generator
