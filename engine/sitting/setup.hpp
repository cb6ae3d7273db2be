#pragma once

#include "sim/bench/bench.hpp"

namespace matula::assets {
struct World;
}
namespace matula::scenario {
struct Scenario;
}

namespace matula::sitting {

/// The bench as a scenario lays it out. The result points into `world`, which must outlive it.
[[nodiscard]] bench::Setup make_setup(const assets::World& world, const scenario::Scenario& scenario);

} // namespace matula::sitting
