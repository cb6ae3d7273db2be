#pragma once

#include "sim/optics/colour.hpp"

#include <array>

namespace matula::render {

/// Light of the room round the glass, linear, relative to the white card; how bright furniture looks, never a
/// reading.
struct RoomLight {
  std::array<float, 3> tint{1, 1, 1};             ///< On wood, paper and wall.
  std::array<float, 3> room{0.42F, 0.43F, 0.42F}; ///< What glass mirrors at its edges.
  std::array<float, 3> window{3.0F, 3.1F, 3.2F};  ///< The window or lamp mirrored in glass.

  [[nodiscard]] static RoomLight of(optics::Lamp lamp) {
    if (lamp == optics::Lamp::Daylight) {
      return {};
    }
    return {{0.80F, 0.66F, 0.47F}, {0.30F, 0.26F, 0.20F}, {3.0F, 2.5F, 1.8F}};
  }
};

} // namespace matula::render
