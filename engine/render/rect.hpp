#pragma once

namespace matula::render {

/// Pixels, x to the right and y down from the top left corner of the window (or picture).
struct Rect {
  float x = 0;
  float y = 0;
  float w = 0;
  float h = 0;

  [[nodiscard]] bool contains(float px, float py) const {
    return px >= x && py >= y && px < x + w && py < y + h;
  }
  [[nodiscard]] bool empty() const { return w <= 0 || h <= 0; }
  [[nodiscard]] bool operator==(const Rect&) const = default;
};

} // namespace matula::render
