#pragma once

#include "sim/bench/bench.hpp"

namespace matula::bench {

/// Weight in a rotor against weight at rest: 4 pi2 r n2 / g, 1.118e-5 r(cm) rpm2.
[[nodiscard]] double rcf_of(double radius_cm, double rpm);
[[nodiscard]] double rpm_of(double radius_cm, double rcf);

Outcome centrifuge(State& state, const Setup& setup, const Centrifuge& action);

} // namespace matula::bench
