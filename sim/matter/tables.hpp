#pragma once

#include "sim/matter/species.hpp"

#include <cstddef>
#include <optional>
#include <vector>

namespace matula::matter {

struct Catalogue;

/// What the laws of pH and density ask of every species, row beside row, so that they need not walk through
/// the whole catalogue. Holds nothing that the catalogue does not say.
struct Tables {
  /// A group that can lose a proton.
  struct Group {
    double ideal = 0; ///< Dissociation constant at zero ionic strength.
    double fall = 0;  ///< Of log10 of the constant per decade of ionic strength.
    int gammas = 0;   ///< Constant = ideal * gamma^gammas.
    int copies = 1;   ///< Equal groups of a macromolecule are one.
  };
  /// A species that has a charge or can get one, and the run of its groups.
  struct Ion {
    SpeciesId id = 0;
    double charge = 0; ///< With every group protonated.
    double buffer_groups = 1;
    bool macromolecule = false;
    std::size_t first = 0;
    std::size_t end = 0;
  };
  /// What the density asks of every species, each a run of numbers that is summed in one go.
  struct Weights {
    std::vector<double>
        lift_g_per_mol; ///< Its mass less that of the water at 20 °C which it takes the place of.
    std::vector<double> charge_squared; ///< Of its whole charge in urine; 0 for macromolecules.
    std::vector<double> volume_ml_per_mol;
  };
  /// A base whose free form takes more room than its ion.
  struct Base {
    SpeciesId id = 0;
    double volume_ml_per_mol = 0;
    std::vector<double> charge; ///< By species, once every acid stronger than the base has lost its proton.
  };

  std::vector<Ion> ions;
  std::vector<Group> groups;
  Weights weights;         ///< By species.
  std::vector<Base> bases; ///< By rising SpeciesId.
};

[[nodiscard]] Tables make_tables(const Catalogue& catalogue);

/// The catalogue's own tables or, where nobody has prepared it, fresh ones put into `spare`.
[[nodiscard]] const Tables& tables_of(const Catalogue& catalogue, std::optional<Tables>& spare);

/// Gives the catalogue its tables; to be called again when a species changes.
void prepare(Catalogue& catalogue);

} // namespace matula::matter
