#pragma once

#include "engine/render/rect.hpp"

namespace matula::window {

/// Where the parts of the window are. They tile it: none overlaps another, none leaves it.
struct Regions {
  render::Rect strip;   ///< Case, clock, waits, text size.
  render::Rect bench;   ///< The bench and the large view.
  render::Rect panel;   ///< What to do, worksheet, help, request.
  render::Rect message; ///< What the bench answered, and cautions.
};

/// Pure. `scale` is the text scale, 1 to 2.
[[nodiscard]] Regions regions(float width, float height, float scale);

} // namespace matula::window
