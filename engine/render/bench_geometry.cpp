#include "engine/render/bench_geometry.hpp"

#include <cmath>

namespace matula::render {

using appearance::Appearance;

Rect hand_card(const Rect& room) {
  return {std::floor(room.x + room.w * 0.045F), std::floor(room.y + room.h * 0.022F),
          std::floor(room.w * 0.91F), std::floor(room.h * 0.956F)};
}

std::uint64_t hash_of(const Rect& r, Hash& h) {
  return h.add(r.x, 0.25).add(r.y, 0.25).add(r.w, 0.25).add(r.h, 0.25).value();
}

const bench::SeenVessel* find(const bench::Scene& scene, const bench::VesselName& name) {
  for (const auto& v : scene.vessels) {
    if (v.name == name) {
      return &v;
    }
  }
  return nullptr;
}

SceneLayout at_origin(SceneLayout at) {
  const float dx = at.area.x;
  const float dy = at.area.y;
  const auto shift = [&](Rect& r) {
    r.x -= dx;
    r.y -= dy;
  };
  for (Rect* r :
       {&at.area, &at.bench, &at.hand, &at.rack, &at.burner, &at.flame, &at.bath, &at.bath_thermometer,
        &at.lamp, &at.hand_vessel, &at.cards[0], &at.cards[1], &at.cards[2]}) {
    shift(*r);
  }
  for (auto* places : {&at.vessels, &at.reagents, &at.paper, &at.test_papers}) {
    for (auto& [name, r] : *places) {
      shift(r);
    }
  }
  at.hand_bottom_px -= dy;
  return at;
}

Rect grown(const Rect& r, float by) {
  return {r.x - by, r.y - by, r.w + 2 * by, r.h + 2 * by};
}

optics::Lamp lamp_of(const bench::Scene& scene, const Show& show) {
  const bench::SeenVessel* held = find(scene, show.in_hand);
  if (held == nullptr && !scene.vessels.empty()) {
    held = &scene.vessels.front();
  }
  return held == nullptr ? optics::Lamp::Daylight : held->looks.view.lamp;
}

Rect hand_steam(const Rect& glass) {
  return {glass.x - glass.w * 0.6F, glass.y - glass.w * 2.2F, glass.w * 2.2F, glass.w * 2.3F};
}

Rect clamp_of(const Rect& glass) {
  return {glass.x - glass.w * 2.75F, glass.y + glass.h * 0.10F, glass.w * 4.0F, glass.h * 0.035F};
}

bool lively(const Appearance& looks) {
  return looks.boiling > 0.01 || looks.steam > 0.01;
}

std::uint64_t float_hash(const bench::Scene& scene, const bench::VesselName& name, double eye_mm) {
  if (!scene.floating || scene.floating->vessel != name) {
    return 0;
  }
  const auto& s = scene.floating->scale;
  return Hash()
      .add(s.reading_at_surface + s.parallax_per_mm * eye_mm, 1e-6)
      .add(s.reading_at_meniscus_top, 1e-6)
      .add(scene.floating->state.lean_mm, 0.01)
      .value();
}

} // namespace matula::render
