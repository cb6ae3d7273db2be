#include "engine/render/bench_geometry.hpp"
#include "engine/render/bench_view_impl.hpp"
#include "engine/render/glass.hpp"

#include <algorithm>
#include <cmath>

namespace matula::render {

using appearance::Appearance;

unsigned BenchView::side_by_side(int slot, const std::vector<Appearance>& vessels, int width, int height) {
  Impl& v = *impl_;
  GLint bound = 0;
  glGetIntegerv(GL_DRAW_FRAMEBUFFER_BINDING, &bound);
  const Target light_target = Target::make(width, height, GL_RGBA32F);
  light_target.bind();
  glClearColor(0.2F, 0.2F, 0.2F, 1);
  glClear(GL_COLOR_BUFFER_BIT);
  glDisable(GL_DEPTH_TEST);
  glDisable(GL_CULL_FACE);
  const float cell = static_cast<float>(width) / static_cast<float>(std::max<std::size_t>(vessels.size(), 1));
  for (std::size_t i = 0; i < vessels.size(); ++i) {
    const Appearance& looks = vessels[i];
    const RoomLight light = RoomLight::of(looks.view.lamp);
    const Rect room{std::floor(cell * static_cast<float>(i)), 0, std::ceil(cell), static_cast<float>(height)};
    bench::Scene one;
    one.vessels.push_back({"v", "", bench::Place::Hand, 0, looks});
    Show show;
    show.in_hand = "v";
    VesselPlace place;
    place.own_card = true;
    place.card = hand_card(room);
    const double outer = looks.inner_diameter_mm / 2 + looks.wall_mm;
    const double wanted_mm = std::clamp(looks.level_mm + 14, 36.0, looks.vessel_height_mm + 8);
    place.scale = static_cast<float>(
        std::min(room.w * (outer < 12 ? 0.55 : 0.80) / (2 * outer), room.h * 0.93 / wanted_mm));
    place.foot_x = room.x + room.w / 2;
    place.foot_y = room.y + room.h * 0.955F;
    light_target.scissor(room);
    v.carpenter.draw_backdrop(room, place.card, looks.view.card,
                              place.foot_y - static_cast<float>(bare_card_mm(looks)) * place.scale,
                              place.scale, light, light_target);
    v.glassware.draw("side", looks, place, light, light_target, v.carpenter.print(), v.carpenter.print(),
                     nullptr, 0);
  }
  v.slots[slot] = Target::make(width, height, GL_RGBA8);
  v.finish_part(light_target, v.slots[slot], {0, 0, static_cast<float>(width), static_cast<float>(height)});
  glDisable(GL_SCISSOR_TEST);
  glBindFramebuffer(GL_FRAMEBUFFER, static_cast<GLuint>(bound));
  return v.slots[slot].texture.get();
}

} // namespace matula::render
