#pragma once

#include "tests/sim/any_support.hpp"

namespace matula::tests {

/// One random sequence: what was done, which pairs of bottles met, and the first law that broke (empty:
/// none).
struct Played {
  std::vector<std::string> steps;
  std::set<Pair> met;
  std::string broken;
};

[[nodiscard]] Played play_portions(std::uint64_t seed); ///< Well-mixed portions held at any temperature.
[[nodiscard]] Played play_columns(std::uint64_t seed);  ///< Tubes with layers, flame, bath and mixing.
[[nodiscard]] Played play_bench(std::uint64_t seed);    ///< The bench's own actions, refused ones included.

} // namespace matula::tests
