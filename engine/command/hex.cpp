#include "engine/command/hex.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace matula::command {

std::string hex_colour(const optics::LinearRgb& linear) {
  const auto byte = [](double c) {
    return std::clamp(static_cast<int>(std::lround(255 * optics::encode_srgb(c))), 0, 255);
  };
  return fmt::format("#{:02x}{:02x}{:02x}", byte(linear.r), byte(linear.g), byte(linear.b));
}

} // namespace matula::command
