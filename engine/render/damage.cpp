#include "engine/render/damage.hpp"

#include <algorithm>
#include <cmath>

namespace matula::render {

bool overlap(const Rect& a, const Rect& b) {
  return a.x < b.x + b.w && b.x < a.x + a.w && a.y < b.y + b.h && b.y < a.y + a.h;
}

Rect joined(const Rect& a, const Rect& b) {
  const float x = std::min(a.x, b.x);
  const float y = std::min(a.y, b.y);
  return {x, y, std::max(a.x + a.w, b.x + b.w) - x, std::max(a.y + a.h, b.y + b.h) - y};
}

namespace {

Rect cut(const Rect& r, const Rect& whole) {
  const float x = std::floor(std::max(r.x, whole.x));
  const float y = std::floor(std::max(r.y, whole.y));
  return {x, y, std::ceil(std::min(r.x + r.w, whole.x + whole.w)) - x,
          std::ceil(std::min(r.y + r.h, whole.y + whole.h)) - y};
}

void add(std::vector<Rect>& parts, Rect part) {
  for (std::size_t i = 0; i < parts.size();) {
    if (overlap(parts[i], part)) {
      part = joined(parts[i], part);
      parts.erase(parts.begin() + static_cast<std::ptrdiff_t>(i));
      i = 0;
    } else {
      ++i;
    }
  }
  parts.push_back(part);
}

} // namespace

std::vector<Rect> Damage::since_last(const std::vector<Item>& items, const Rect& whole) {
  std::vector<Rect> parts;
  std::map<std::string, Seen> now;
  const auto spoil = [&](const Rect& r) {
    const Rect inside = cut(r, whole);
    if (!inside.empty()) {
      add(parts, inside);
    }
  };
  for (const Item& item : items) {
    now[item.name] = {item.touches, item.content};
    const auto before = last_.find(item.name);
    if (before == last_.end()) {
      spoil(item.touches);
    } else if (before->second.content != item.content || !(before->second.touches == item.touches)) {
      spoil(before->second.touches);
      spoil(item.touches);
    }
  }
  for (const auto& [name, seen] : last_) {
    if (now.find(name) == now.end()) {
      spoil(seen.touches);
    }
  }
  last_ = std::move(now);
  return parts;
}

} // namespace matula::render
