#pragma once

#include "sim/reaction/reaction.hpp"
#include "sim/reaction/solubility.hpp"

#include <cstdint>
#include <optional>
#include <vector>

namespace matula::reaction {

struct Network;

/// What `react` asks of every row before it works one out, so that rows whose substances are absent cost next
/// to nothing. Holds nothing that the rows do not say.
struct Index {
  /// Rows are numbered through: reactions, then precipitations, then breakdowns. Things are species, by
  /// SpeciesId, and behind them kinds of solid, by ParticleId.
  struct Row {
    std::uint8_t waits_for = 0; ///< How many of the things it asks for have to come before it can go on.
    std::vector<std::size_t> makes;
  };
  struct Solid {
    Solubility law = Solubility::weak_acid;
    double molar_mass_g = 0;
  };
  std::size_t species = 0; ///< How many things come before the first kind of solid.
  std::vector<Row> rows;
  std::vector<std::vector<std::size_t>> asked_by; ///< By thing: the rows that ask for it.
  std::vector<bool> needs_ph;                     ///< Of reactions: whether the law looks at the pH.
  std::vector<Solid> precipitations;
  /// Of reactions: the one that takes this one back, where both are first order and nothing else: such a
  /// couple is worked out as one, exactly. `none` for all others.
  std::vector<std::size_t> taken_back_by;
};

inline constexpr std::size_t none = static_cast<std::size_t>(-1);

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

[[nodiscard]] Possible possible_rows(const matter::Mixture& mixture, const Index& index);

/// The same kept for the next mixture: neighbours in a tube, and one layer from step to step, mostly hold the
/// same things. Good for one index only.
class LastPossible {
public:
  [[nodiscard]] const Possible& rows(const matter::Mixture& mixture, const Index& index);

private:
  [[nodiscard]] bool same(const matter::Mixture& mixture, const Index& index) const;

  std::vector<char> there_; ///< By thing; empty before the first time.
  std::size_t solids_ = 0;  ///< How many kinds.
  Possible possible_;
};

} // namespace matula::reaction
