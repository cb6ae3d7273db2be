#pragma once

#include <cstddef>

namespace matula::records {

/// A sitting's log larger than this is refused: three hours with every tick and action are some 100 kB.
inline constexpr std::size_t most_log_bytes = 8U << 20U;

/// And a scenario's text.
inline constexpr std::size_t most_scenario_bytes = 1U << 20U;

} // namespace matula::records
