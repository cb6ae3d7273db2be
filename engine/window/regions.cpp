#include "engine/window/regions.hpp"

#include <algorithm>
#include <cmath>

namespace matula::window {

Regions regions(float width, float height, float scale) {
  // Where large text meets a small window, answers and cautions need more lines.
  const bool narrow = width / scale < 1000;
  const float strip_h = std::floor(74.0F * scale);
  const float message_h = std::floor((narrow ? 98.0F : 80.0F) * scale);
  // The panel grows with its text, but the bench keeps at least two fifths of the width.
  const float panel_w = std::floor(std::clamp(400.0F * scale, 0.30F * width, 0.60F * width));
  const float middle_h = std::max(height - strip_h - message_h, 0.0F);
  Regions r;
  r.strip = {0, 0, width, strip_h};
  r.bench = {0, strip_h, width - panel_w, middle_h};
  r.panel = {width - panel_w, strip_h, panel_w, middle_h};
  r.message = {0, strip_h + middle_h, width, message_h};
  return r;
}

} // namespace matula::window
