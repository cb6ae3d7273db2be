#pragma once

#include "sim/reaction/reaction.hpp"
#include "sim/reaction/solubility.hpp"

#include <optional>
#include <vector>

namespace matula::reaction {

struct Network;

/// What `react` asks of every row before it works one out, so that rows whose substances are absent cost next
/// to nothing. Holds nothing that the rows do not say.
struct Index {
  struct Needs {
    std::size_t first = 0; ///< In `ids`: what has to be there, all of it,
    std::size_t made = 0;  ///< and from here to the end what is made.
    std::size_t end = 0;
    bool ph = false; ///< Whether the law looks at the pH.
  };
  struct Solid {
    Solubility law = Solubility::weak_acid;
    double molar_mass_g = 0;
  };
  std::vector<matter::SpeciesId> ids;
  std::vector<Needs> reactions;
  std::vector<Solid> precipitations;
};

[[nodiscard]] Index make_index(const Network& network, const matter::Catalogue& catalogue);

/// The network's own index or, where nobody has prepared it, a fresh one put into `spare`.
[[nodiscard]] const Index& index_of(const Network& network, const matter::Catalogue& catalogue,
                                    std::optional<Index>& spare);

/// Gives the network its index; to be called again when a row changes.
void prepare(Network& network, const matter::Catalogue& catalogue);

/// Rows that can do anything in a mixture, or in what the others make of it; by number, rising.
struct Possible {
  std::vector<std::size_t> reactions;
  std::vector<std::size_t> precipitations;
};

[[nodiscard]] Possible possible_rows(const matter::Mixture& mixture, const Network& network,
                                     const Index& index);

} // namespace matula::reaction
