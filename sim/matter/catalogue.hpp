#pragma once

#include "sim/matter/particle.hpp"
#include "sim/matter/species.hpp"
#include "sim/matter/tables.hpp"

#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace matula::matter {

/// A liquid that is heavier than water and does not mix with it.
struct HeavyLiquid {
  std::string key; ///< "chloroform"
  std::string label;
  double density_kg_m3 = 1489;
  double boiling_c = 61;
  double heat_capacity_j_per_ml_k = 1.43;
  double latent_heat_j_per_ml = 368;
  double diffusivity_m2_s = 1e-9; ///< Of a dissolved dye, in it and in water.
  std::string odour;
  std::string source;
};

/// The part of a powder that stays a solid until liquid takes it up.
struct Powder {
  ParticleId solid = 0;
  double g_per_ml = 0;        ///< Of heaped powder, air included.
  std::size_t size_class = 0; ///< Of its grains.
};

/// What one millilitre of a bottle on the shelf holds; of a powder, a heaped millilitre.
struct Reagent {
  std::string key;   ///< "acetic_acid_10"
  std::string label; ///< "Acetic acid 10 %"
  std::vector<std::pair<SpeciesId, double>> mol_per_l;
  std::vector<std::pair<ParticleId, double>> solids_g_per_ml; ///< Hanging in it, of the smallest class.
  double grams_per_ml = 1; ///< Of what is in the bottle, powder counted without its air.
  double drop_ml = 0.05;   ///< Common practice: 20 drops to the millilitre.
  std::string caution;     ///< Key of the caution shown beside the bottle; may be empty.
  std::string waste;       ///< Word of the bin its leftovers belong in; empty: the sink.
  bool hood = false;       ///< To be opened under the fume hood only.
  bool flammable = false;  ///< Its vapour catches fire near a flame.
  std::string solvent;     ///< Key of the heavy liquid it is made with; empty for water.
  std::optional<Powder> powder;
  std::string source;
};

/// All substances, solids and bottles of the world: immutable once loaded. Rows come from the assets.
struct Catalogue {
  std::vector<Species> species;
  std::vector<ParticleKind> particles;
  std::vector<Reagent> reagents;
  std::shared_ptr<const Tables> tables; ///< Filled by prepare; laws work without them, slowly.
  HeavyLiquid heavy; ///< The one liquid of its kind on the shelf; no key when there is none.

  [[nodiscard]] std::optional<SpeciesId> find_species(std::string_view key) const;
  [[nodiscard]] std::optional<ParticleId> find_particle(std::string_view key) const;
  [[nodiscard]] const Reagent* find_reagent(std::string_view key) const;
};

} // namespace matula::matter
