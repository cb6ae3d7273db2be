#pragma once

#include "sim/matter/catalogue.hpp"
#include "sim/matter/populations.hpp"

#include <vector>

namespace matula::matter {

/// A well-mixed portion of liquid with what is dissolved and what hangs in it. Amounts are totals for the
/// portion.
struct Mixture {
  double volume_ml = 0;
  double temperature_c = 20;
  std::vector<double> mmol; ///< By SpeciesId.
  Populations populations;

  [[nodiscard]] bool empty() const { return volume_ml <= 0; }
  /// mmol per mL is mol per L: the concentration in mol/L, 0 for an empty portion.
  [[nodiscard]] double molar(SpeciesId id) const { return empty() ? 0.0 : mmol[id] / volume_ml; }
};

[[nodiscard]] Mixture empty_mixture(const Catalogue& catalogue);

/// What comes out of a bottle when `volume_ml` are taken, at `temperature_c`. Of a powder these are heaped;
/// the portion has the volume of its grains, without the air between them: much the same as they add to a
/// liquid that dissolves them.
[[nodiscard]] Mixture from_bottle(const Reagent& reagent, double volume_ml, double temperature_c,
                                  const Catalogue& catalogue);

/// Adds `part` to `whole`: volumes, amounts and heat add; nothing is lost.
void merge(Mixture& whole, const Mixture& part);

/// Takes `volume_ml` (clamped to what is there) out of `from`, with its share of everything.
[[nodiscard]] Mixture draw(Mixture& from, double volume_ml);

/// Grams of everything in the portion but water. A conserved quantity of every closed process.
[[nodiscard]] double solute_mass_g(const Mixture& mixture, const Catalogue& catalogue);

} // namespace matula::matter
