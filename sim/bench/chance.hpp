#pragma once

#include "sim/optics/random.hpp"

#include <cstdint>
#include <string_view>

namespace matula::bench {

/// Uses of chance, one stream each, so that more draws for one cannot shift another.
enum class Purpose : std::uint64_t { Lowering = 1, Bump = 2, Pieces = 3, Instrument = 4 };

/// FNV-1a of a name.
[[nodiscard]] constexpr std::uint64_t hash_name(std::string_view name) {
  std::uint64_t hash = 0xcbf29ce484222325ULL;
  for (const char letter : name) {
    hash = (hash ^ static_cast<unsigned char>(letter)) * 0x100000001b3ULL;
  }
  return hash;
}

/// Even in 0..1, fixed by seed, purpose, who and which.
[[nodiscard]] constexpr double chance(std::uint64_t seed, Purpose purpose, std::uint64_t who,
                                      std::uint64_t which) {
  const std::uint64_t bits = optics::hash(
      optics::hash(optics::hash(optics::hash(seed) ^ static_cast<std::uint64_t>(purpose)) ^ who) ^ which);
  return static_cast<double>(bits >> 11) * 0x1.0p-53;
}

} // namespace matula::bench
