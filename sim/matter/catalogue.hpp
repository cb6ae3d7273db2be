#pragma once

#include "sim/matter/particle.hpp"
#include "sim/matter/species.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace matula::matter {

/// What one millilitre of a bottle on the shelf holds.
struct Reagent {
  std::string key;   ///< "acetic_acid_10"
  std::string label; ///< "Acetic acid 10 %"
  std::vector<std::pair<SpeciesId, double>> mol_per_l;
  double grams_per_ml = 1; ///< Of what is in the bottle, powder counted without its air.
  double drop_ml = 0.05;   ///< Common practice: 20 drops to the millilitre.
  std::string caution;     ///< Key of the caution shown beside the bottle; may be empty.
  std::string waste;      ///< Word of the bin its leftovers belong in; empty: the sink.
  bool hood = false;      ///< To be opened under the fume hood only.
  bool flammable = false; ///< Its vapour catches fire near a flame.
  std::string source;
};

/// All substances, solids and bottles of the world: immutable once loaded. Rows come from the assets.
struct Catalogue {
  std::vector<Species> species;
  std::vector<ParticleKind> particles;
  std::vector<Reagent> reagents;

  [[nodiscard]] std::optional<SpeciesId> find_species(std::string_view key) const;
  [[nodiscard]] std::optional<ParticleId> find_particle(std::string_view key) const;
  [[nodiscard]] const Reagent* find_reagent(std::string_view key) const;
};

} // namespace matula::matter
