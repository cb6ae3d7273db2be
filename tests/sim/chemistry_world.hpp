#pragma once

#include "sim/matter/catalogue.hpp"
#include "sim/matter/mixture.hpp"
#include "sim/reaction/react.hpp"

#include <string>
#include <utility>
#include <vector>

namespace matula::tests {

/// The shipped substances, bottles and laws, read once from assets/chemistry.
struct ChemistryWorld {
  matter::Catalogue catalogue;
  reaction::Network network;

  [[nodiscard]] matter::SpeciesId id(const std::string& key) const;
  [[nodiscard]] matter::ParticleId solid(const std::string& key) const;
  [[nodiscard]] const reaction::Reaction& reaction(const std::string& key) const;
};

[[nodiscard]] const ChemistryWorld& chemistry_world();

using Amounts = std::vector<std::pair<std::string, double>>; ///< Species key, mmol/L.

/// A portion at 22 °C holding the amounts and nothing else.
[[nodiscard]] matter::Mixture solution(double volume_ml, const Amounts& mmol_per_l);

/// Millilitres out of a bottle, at 22 °C.
[[nodiscard]] matter::Mixture bottle(const std::string& reagent, double volume_ml);

/// A healthy adult's urine (typical concentrations, from memory) with extras, brought to `ph` with chloride
/// or sodium.
[[nodiscard]] matter::Mixture urine(double volume_ml, double ph, const Amounts& extra = {});

/// `first` and `second` poured together.
[[nodiscard]] matter::Mixture together(matter::Mixture first, const matter::Mixture& second);

/// Reacts in steps of `step_s` at `temperature_c`.
void hold(matter::Mixture& mixture, double temperature_c, double seconds, double step_s = 1,
          double shear_per_s = 0.4);

/// mmol/L to g/dL and back for a species.
[[nodiscard]] double mmol_per_l_of_g_per_dl(const std::string& species, double g_per_dl);

} // namespace matula::tests
