#pragma once

#include <cstdint>

namespace matula::optics {

/// Counter-based random numbers (the finaliser of SplitMix64, Steele, Lea and Flood 2014): the same on every
/// platform.
[[nodiscard]] constexpr std::uint64_t hash(std::uint64_t value) {
  value += 0x9e3779b97f4a7c15ULL;
  value = (value ^ (value >> 30U)) * 0xbf58476d1ce4e5b9ULL;
  value = (value ^ (value >> 27U)) * 0x94d049bb133111ebULL;
  return value ^ (value >> 31U);
}

/// A stream of numbers evenly spread over [0, 1).
class Stream {
public:
  explicit constexpr Stream(std::uint64_t seed) : state_(hash(seed)) {}

  [[nodiscard]] constexpr double next() {
    state_ += 0x9e3779b97f4a7c15ULL;
    constexpr double two_to_minus_53 = 1.0 / 9007199254740992.0;
    return static_cast<double>(hash(state_) >> 11U) * two_to_minus_53;
  }

private:
  std::uint64_t state_;
};

} // namespace matula::optics
