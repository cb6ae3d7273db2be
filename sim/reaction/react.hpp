#pragma once

#include "sim/matter/mixture.hpp"
#include "sim/reaction/reaction.hpp"

#include <vector>

namespace matula::reaction {

/// Everything that can happen inside one well-mixed portion.
struct Network {
  std::vector<Reaction> reactions;
  std::vector<Precipitation> precipitations;
};

/// Kinetics, precipitation (new solid enters the populations' classes) and dissolution in one well-mixed portion for
/// `seconds` at its present temperature. Volume and temperature stay; mass of solute plus solid is conserved.
void react(matter::Mixture& mixture, const Network& network, const matter::Catalogue& catalogue, double seconds,
           double shear_per_s);

} // namespace matula::reaction
