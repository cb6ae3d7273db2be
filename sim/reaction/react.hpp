#pragma once

#include "sim/reaction/reaction.hpp"

namespace matula::reaction {

/// Every law of change between substances; immutable.
struct Network {
  std::vector<Reaction> reactions;
  std::vector<Precipitation> precipitations;
};

/// Lets one well-mixed portion react at constant temperature and volume for `seconds` (>= 0). Pure and deterministic. No
/// amount goes below zero, every atom that leaves one species turns up in another, in a solid, or in water. `shear_per_s`
/// (>= 0) is the mean shear rate, which feeds growing solids.
void react(matter::Mixture& mixture, const Network& network, const matter::Catalogue& catalogue, double seconds,
           double shear_per_s);

} // namespace matula::reaction
