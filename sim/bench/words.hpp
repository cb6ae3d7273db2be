#pragma once

#include "sim/bench/bench.hpp"

#include <string>

namespace matula::bench {

/// "tube-3" as "tube 3", "jar" as "the jar", "specimen" as "the specimen cup".
[[nodiscard]] std::string spoken(const VesselName& name);

/// "4.5 mL": to a tenth, without a needless zero.
[[nodiscard]] std::string spoken_ml(double volume_ml);

[[nodiscard]] std::string no_such_vessel(const VesselName& name);

[[nodiscard]] Outcome refused(const std::string& because);

} // namespace matula::bench
