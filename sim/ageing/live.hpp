#pragma once

#include "sim/ageing/keeping.hpp"
#include "sim/ageing/laws.hpp"
#include "sim/reaction/react.hpp"

namespace matula::ageing {

/// Lets a well-mixed specimen live for `hours` (>= 0) at its temperature: organisms, cells, exchange with the
/// air and, where `keeping.chemistry` says so, the network's reactions (its solids are left alone). Solved by
/// Rosenbrock's method of fourth order with step control. Pure: the same call gives the same bits.
void live(matter::Mixture& mixture, const matter::Catalogue& catalogue, const reaction::Network& network,
          const Laws& laws, const Keeping& keeping, double hours, Gas& gas);

} // namespace matula::ageing
