#include "engine/render/bench_geometry.hpp"
#include "engine/render/bench_view_impl.hpp"
#include "engine/render/glass.hpp"

#include <algorithm>
#include <cmath>

namespace matula::render {

using appearance::Appearance;

namespace {

/// As large as the room allows, its liquid in sight.
void place_alone(const Rect& room, const Appearance& looks, VesselPlace& place) {
  const double outer = looks.inner_diameter_mm / 2 + looks.wall_mm;
  const double wanted_mm = std::clamp(looks.level_mm + 14, 36.0, looks.vessel_height_mm + 8);
  place.scale = static_cast<float>(
      std::min(room.w * (outer < 12 ? 0.55 : 0.80) / (2 * outer), room.h * 0.93 / wanted_mm));
  place.foot_x = room.x + room.w / 2;
  place.foot_y = room.y + room.h * 0.955F;
}

/// As wide as the room, with the surface a little below the middle: there the scale is read.
void place_float(const Rect& room, const Appearance& looks, VesselPlace& place) {
  const double outer = looks.inner_diameter_mm / 2 + looks.wall_mm;
  place.scale = static_cast<float>(room.w * 0.80 / (2 * outer));
  place.foot_x = room.x + room.w / 2;
  place.foot_y = room.y + room.h * 0.60F + static_cast<float>(looks.level_mm) * place.scale;
}

} // namespace

GLuint BenchView::Impl::into_slot(int slot, int width, int height,
                                  const std::function<void(const Target& light)>& paint) {
  GLint bound = 0;
  glGetIntegerv(GL_DRAW_FRAMEBUFFER_BINDING, &bound);
  const Target light_target = Target::make(width, height, GL_RGBA32F);
  light_target.bind();
  glClearColor(0.2F, 0.2F, 0.2F, 1);
  glClear(GL_COLOR_BUFFER_BIT);
  glDisable(GL_DEPTH_TEST);
  glDisable(GL_CULL_FACE);
  paint(light_target);
  slots[slot] = Target::make(width, height, GL_RGBA8);
  finish_part(light_target, slots[slot], {0, 0, static_cast<float>(width), static_cast<float>(height)});
  glDisable(GL_SCISSOR_TEST);
  glBindFramebuffer(GL_FRAMEBUFFER, static_cast<GLuint>(bound));
  return slots[slot].texture.get();
}

void BenchView::Impl::paint_one(const Rect& room, const Appearance& looks, const bench::SeenFloat* floating,
                                const Target& target) {
  const RoomLight light = RoomLight::of(looks.view.lamp);
  VesselPlace place;
  place.own_card = true;
  place.card = hand_card(room);
  if (floating == nullptr) {
    place_alone(room, looks, place);
  } else {
    place_float(room, looks, place);
  }
  target.scissor(room);
  carpenter.draw_backdrop(room, place.card, looks.view.card,
                          place.foot_y - static_cast<float>(bare_card_mm(looks)) * place.scale, place.scale,
                          light, target);
  glassware.draw("side", looks, place, light, target, carpenter.print(), carpenter.print(), floating, 0);
}

unsigned BenchView::side_by_side(int slot, const std::vector<Appearance>& vessels, int width, int height) {
  return impl_->into_slot(slot, width, height, [&](const Target& light) {
    const float cell =
        static_cast<float>(width) / static_cast<float>(std::max<std::size_t>(vessels.size(), 1));
    for (std::size_t i = 0; i < vessels.size(); ++i) {
      const Rect room{std::floor(cell * static_cast<float>(i)), 0, std::ceil(cell),
                      static_cast<float>(height)};
      impl_->paint_one(room, vessels[i], nullptr, light);
    }
  });
}

unsigned BenchView::float_in_jar(int slot, const Appearance& jar, const bench::SeenFloat& floating, int width,
                                 int height) {
  return impl_->into_slot(slot, width, height, [&](const Target& light) {
    impl_->paint_one({0, 0, static_cast<float>(width), static_cast<float>(height)}, jar, &floating, light);
  });
}

} // namespace matula::render
