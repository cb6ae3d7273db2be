#pragma once

#include "engine/attribution/replay.hpp"

namespace matula::attribution {

/// Lengthens (or shortens, below 0) the waiting before the steps `from`..`to` by `seconds` in all: the
/// longest wait grows, the last ones shrink. A step past the last is the reading.
[[nodiscard]] std::vector<Change> stretch(const Work& work, std::size_t from, std::size_t to, double seconds);

/// Takes `seconds` off the waits before the steps `from`..`to`, the longest first.
[[nodiscard]] std::vector<Change> shorten(const Work& work, std::size_t from, std::size_t to, double seconds);

} // namespace matula::attribution
