#pragma once

#include <cstdint>
#include <string_view>

namespace matula::bench {

/// Uses of chance, one stream each, so that more draws for one cannot shift another.
enum class Purpose : std::uint64_t { Lowering = 1, Bump = 2, Pieces = 3 };

/// Scrambles 64 bits (splitmix64: Steele, Lea and Flood, OOPSLA 2014).
[[nodiscard]] constexpr std::uint64_t scramble(std::uint64_t x) {
  x += 0x9e3779b97f4a7c15ULL;
  x = (x ^ (x >> 30)) * 0xbf58476d1ce4e5b9ULL;
  x = (x ^ (x >> 27)) * 0x94d049bb133111ebULL;
  return x ^ (x >> 31);
}

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
  const std::uint64_t bits =
      scramble(scramble(scramble(scramble(seed) ^ static_cast<std::uint64_t>(purpose)) ^ who) ^ which);
  return static_cast<double>(bits >> 11) * 0x1.0p-53;
}

} // namespace matula::bench
