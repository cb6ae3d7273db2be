#pragma once

#include <cmath>
#include <cstdint>
#include <string_view>

namespace matula::render {

/// Order-dependent hash (FNV-1a over rounded values), for telling whether a picture must be drawn again.
class Hash {
public:
  Hash& add(double value, double step) {
    const auto n = static_cast<std::uint64_t>(static_cast<std::int64_t>(std::llround(value / step)));
    return mix(n);
  }
  Hash& add(std::string_view text) {
    for (const char c : text) {
      mix(static_cast<unsigned char>(c));
    }
    return mix(text.size());
  }
  Hash& mix(std::uint64_t n) {
    state_ = (state_ ^ n) * 0x100000001B3ULL;
    state_ ^= state_ >> 29;
    return *this;
  }
  [[nodiscard]] std::uint64_t value() const { return state_; }

private:
  std::uint64_t state_ = 0xCBF29CE484222325ULL;
};

/// 0..1 from a counter, the same on every machine.
[[nodiscard]] inline double unit_of(std::uint32_t n) {
  n ^= n >> 16;
  n *= 0x7FEB352DU;
  n ^= n >> 15;
  n *= 0x846CA68BU;
  n ^= n >> 16;
  return n / 4294967296.0;
}

} // namespace matula::render
