#pragma once

#include "engine/render/rect.hpp"

#include <cstdint>
#include <functional>
#include <map>
#include <string>
#include <vector>

namespace matula::render {

/// One thing to draw: where it may touch, a hash of all it is drawn from, and how.
struct Item {
  std::string name;
  Rect touches;
  std::uint64_t content = 0;
  std::function<void()> draw;
};

[[nodiscard]] bool overlap(const Rect& a, const Rect& b);
[[nodiscard]] Rect joined(const Rect& a, const Rect& b);

/// Remembers what was drawn last and says which parts of the picture must be drawn again.
class Damage {
public:
  /// Rectangles that do not overlap one another, within `whole`, grown to whole pixels.
  [[nodiscard]] std::vector<Rect> since_last(const std::vector<Item>& items, const Rect& whole);
  void forget() { last_.clear(); }

private:
  struct Seen {
    Rect touches;
    std::uint64_t content = 0;
  };
  std::map<std::string, Seen> last_;
};

} // namespace matula::render
