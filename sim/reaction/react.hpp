#pragma once

#include "sim/matter/mixture.hpp"
#include "sim/matter/ph.hpp"
#include "sim/reaction/index.hpp"
#include "sim/reaction/reaction.hpp"

#include <memory>
#include <optional>
#include <vector>

namespace matula::reaction {

/// Everything that can happen inside one well-mixed portion; immutable.
struct Network {
  std::vector<Reaction> reactions;
  std::vector<Precipitation> precipitations;
  std::vector<Breakdown> breakdowns;
  std::shared_ptr<const Index> index; ///< Filled by prepare; react works without it, slowly.
};

/// What a portion leaves for the next one, mostly its neighbour or itself a moment later: it saves searches,
/// and moves no result further than the searches' own tolerances.
struct Memory {
  LastPossible rows;
  std::optional<matter::Acidity> near; ///< Where the next search for the pH begins.
};

/// Kinetics, cells falling apart, precipitation (new solid enters the populations' classes) and dissolution
/// in one well-mixed portion for `seconds` (>= 0) at its present temperature. Volume and temperature stay;
/// `shear_per_s` (>= 0) is the mean shear rate, which feeds slow crystals. No amount goes below zero. Mass of
/// solute plus solid is conserved up to the water, protons and oxygen that a row names.
void react(matter::Mixture& mixture, const Network& network, const matter::Catalogue& catalogue,
           double seconds, double shear_per_s, const Exposure& exposure, Memory& memory);
void react(matter::Mixture& mixture, const Network& network, const matter::Catalogue& catalogue,
           double seconds, double shear_per_s, const Exposure& exposure = {});

} // namespace matula::reaction
