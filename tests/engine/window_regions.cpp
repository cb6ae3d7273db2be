#include "engine/window/regions.hpp"

#include <catch2/catch.hpp>

#include <array>

using matula::render::Rect;

namespace {
bool overlap(const Rect& a, const Rect& b) {
  return a.x < b.x + b.w && b.x < a.x + a.w && a.y < b.y + b.h && b.y < a.y + a.h;
}
} // namespace

TEST_CASE("the parts of the bench screen never overlap and stay inside") {
  const auto size = GENERATE(std::array<float, 2>{1280, 800}, std::array<float, 2>{1920, 1080});
  const auto scale = GENERATE(1.0F, 1.25F, 1.5F, 1.75F, 2.0F);
  const auto p = matula::window::regions(size[0], size[1], scale);
  const std::array<Rect, 4> all{p.strip, p.bench, p.panel, p.message};
  for (std::size_t i = 0; i < all.size(); ++i) {
    CHECK(all[i].x >= 0);
    CHECK(all[i].y >= 0);
    CHECK(all[i].x + all[i].w <= size[0]);
    CHECK(all[i].y + all[i].h <= size[1]);
    CHECK(all[i].w >= 500 * (i == 1));
    CHECK(all[i].h >= 400 * (i == 1));
    for (std::size_t j = i + 1; j < all.size(); ++j) {
      CHECK_FALSE(overlap(all[i], all[j]));
    }
  }
}
