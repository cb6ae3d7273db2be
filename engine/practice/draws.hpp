#pragma once

#include "sim/optics/random.hpp"

#include <algorithm>
#include <cstdint>
#include <string_view>

namespace matula::practice {

/// Chance of one unknown or set. Every draw has a name, so that one more leaves the others as they were.
class Draws {
public:
  explicit Draws(std::uint64_t seed) : seed_(optics::hash(seed)) {}

  /// Even in 0..1, 1 left out.
  [[nodiscard]] double even(std::string_view name) const {
    return optics::Stream(optics::hash(seed_ ^ hash_of(name))).next();
  }
  [[nodiscard]] double between(std::string_view name, double low, double high) const {
    return low + (high - low) * even(name);
  }
  /// Even in 0 to count - 1; count at least 1.
  [[nodiscard]] std::size_t pick(std::string_view name, std::size_t count) const {
    return std::min(count - 1, static_cast<std::size_t>(even(name) * static_cast<double>(count)));
  }
  /// A seed for something further.
  [[nodiscard]] std::uint64_t seed(std::string_view name) const {
    constexpr std::uint64_t most = 1000000000; // Short enough to be read out.
    return 1 + optics::hash(seed_ ^ hash_of(name)) % most;
  }

private:
  /// FNV-1a (Fowler, Noll, Vo).
  static std::uint64_t hash_of(std::string_view name) {
    std::uint64_t hash = 0xcbf29ce484222325ULL;
    for (const char letter : name) {
      hash = (hash ^ static_cast<unsigned char>(letter)) * 0x100000001b3ULL;
    }
    return hash;
  }

  std::uint64_t seed_;
};

} // namespace matula::practice
