#pragma once

#include <optional>
#include <string>
#include <vector>

namespace matula::bench {

/// What an action let the person know.
struct Outcome {
  bool done = true;
  std::string refused_because;         ///< In words a learner can act on; empty when done.
  std::optional<double> thermometer_c; ///< To 0.5 °C, as the instrument is divided.
  std::vector<std::string> odours;
  std::string caution; ///< Key of a caution to show now; empty for none.
};

} // namespace matula::bench
