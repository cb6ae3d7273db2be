#include "engine/render/layout.hpp"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <vector>

namespace matula::render {

namespace {

/// A rectangle in parts of another: centre x, bottom y, width and height, all 0..1.
Rect standing(const Rect& in, double centre, double bottom, double w, double h) {
  return {static_cast<float>(in.x + in.w * (centre - w / 2)), static_cast<float>(in.y + in.h * (bottom - h)),
          static_cast<float>(in.w * w), static_cast<float>(in.h * h)};
}

Rect glass_rect(const appearance::Appearance& looks, double axis_x, double bottom_y, double scale) {
  const double outer = looks.inner_diameter_mm / 2 + looks.wall_mm;
  const double height = looks.vessel_height_mm + looks.wall_mm;
  return {static_cast<float>(axis_x - outer * scale), static_cast<float>(bottom_y - height * scale),
          static_cast<float>(2 * outer * scale), static_cast<float>(height * scale)};
}

bool is_tube(const bench::VesselName& name) {
  return name.starts_with("tube-");
}

/// The rack's tubes in the order of their numbers.
std::vector<const bench::SeenVessel*> tubes_of(const bench::Scene& scene) {
  std::vector<const bench::SeenVessel*> tubes;
  for (const auto& v : scene.vessels) {
    if (is_tube(v.name)) {
      tubes.push_back(&v);
    }
  }
  const auto number = [](const bench::SeenVessel* v) { return std::atoi(v->name.c_str() + 5); };
  std::stable_sort(tubes.begin(), tubes.end(),
                   [&](const auto* a, const auto* b) { return number(a) < number(b); });
  return tubes;
}

void place_tubes(SceneLayout& at, const bench::Scene& scene, double scale) {
  const auto tubes = tubes_of(scene);
  const double pitch = at.rack.w * 0.94 / static_cast<double>(std::max<std::size_t>(tubes.size(), 1));
  int i = 0;
  int bathed = 0;
  for (const bench::SeenVessel* tube : tubes) {
    const bench::SeenVessel& v = *tube;
    double x = at.rack.x + at.rack.w * 0.03 + (i + 0.5) * pitch;
    double bottom = at.rack.y + at.rack.h * 0.92;
    const double height = (v.looks.vessel_height_mm + v.looks.wall_mm) * scale;
    const double hole = std::min(pitch, at.rack.w * 0.94 / 6); // Also where few tubes stand.
    at.paper["hole:" + v.name] = {static_cast<float>(x - hole / 2), at.rack.y + at.rack.h * 0.935F,
                                  static_cast<float>(hole), at.rack.h * 0.06F};
    if (v.place == bench::Place::Flame) {
      x = at.flame.x + at.flame.w / 2;
      // The flame's tip plays on the height of the liquid it is held at.
      const double played = std::max(6.0, v.looks.level_mm * std::clamp(v.flame_height, 0.0, 1.0));
      bottom = std::max(at.flame.y + at.flame.h * 0.80 + played * scale * 0.5, at.bench.y + height + 4);
    } else if (v.place == bench::Place::Bath) {
      x = at.bath.x + at.bath.w * (0.24 + 0.13 * (bathed++ % 5));
      bottom = at.bath.y + at.bath.h * 0.93;
    }
    at.vessels[v.name] = glass_rect(v.looks, x, bottom, scale);
    ++i;
  }
}

/// Where things stand when an Esbach tube is out as well.
double crowded_centre(const bench::VesselName& name) {
  return name == "specimen" ? 0.085 : name == "jar" ? 0.205 : name == "esbach" ? 0.302 : 0.399;
}

void place_others(SceneLayout& at, const bench::Scene& scene, double scale) {
  const bool crowded = std::any_of(scene.vessels.begin(), scene.vessels.end(),
                                   [](const bench::SeenVessel& v) { return v.name == "esbach"; });
  for (const auto& v : scene.vessels) {
    if (is_tube(v.name)) {
      continue;
    }
    const double centre = crowded                ? crowded_centre(v.name)
                          : v.name == "specimen" ? 0.09
                          : v.name == "jar"      ? 0.245
                                                 : 0.385;
    const Rect r =
        glass_rect(v.looks, at.bench.x + at.bench.w * centre, at.bench.y + at.bench.h * 0.94, scale);
    at.vessels[v.name] = r;
    if (v.name == "specimen") {
      at.paper[v.name] = {r.x + r.w * 0.05F, r.y + r.h * 0.44F, r.w * 0.90F, r.h * 0.46F};
    }
    at.paper["tag:" + v.name] = standing(at.bench, centre, 0.988, crowded ? 0.092 : 0.115, 0.036);
  }
}

void place_bottles(SceneLayout& at, const bench::Scene& scene) {
  const double shelf_w = 0.77;
  const double n = static_cast<double>(std::max<std::size_t>(scene.shelf.size(), 6));
  for (std::size_t i = 0; i < scene.shelf.size(); ++i) {
    const double centre = 0.02 + shelf_w * (static_cast<double>(i) + 0.5) / n;
    const Rect r = standing(at.bench, centre, 0.268, std::min(0.12, shelf_w / n * 0.94), 0.205);
    at.reagents[scene.shelf[i]] = r;
    at.paper[scene.shelf[i]] = {r.x + r.w * 0.05F, r.y + r.h * 0.41F, r.w * 0.90F, r.h * 0.46F};
  }
}

void place_hand(SceneLayout& at, const bench::Scene& scene, const Show& show) {
  for (const auto& v : scene.vessels) {
    if (v.name != show.in_hand || at.hand.empty()) {
      continue;
    }
    const double outer = v.looks.inner_diameter_mm / 2 + v.looks.wall_mm;
    const bool floating = scene.floating && scene.floating->vessel == v.name;
    // As large as the width allows; a tube is shown from its bottom to a finger's breadth above the liquid.
    const double by_width = at.hand.w * (outer < 12 ? 0.42 : 0.80) / (2 * outer);
    const double wanted_mm = std::clamp(v.looks.level_mm + 16, 40.0, v.looks.vessel_height_mm + 8);
    const double by_height = at.hand.h * 0.94 / wanted_mm;
    const double scale = floating ? by_width : std::min(by_width, by_height);
    double bottom = at.hand.y + at.hand.h * 0.965;
    if (floating) {
      bottom = at.hand.y + at.hand.h * 0.60 + v.looks.level_mm * scale;
    }
    at.hand_scale_px_mm = static_cast<float>(scale);
    at.hand_bottom_px = static_cast<float>(bottom);
    at.hand_vessel = glass_rect(v.looks, at.hand.x + at.hand.w / 2, bottom, scale);
  }
}

/// The latest papers lie before the cards, the last one nearest to the eye.
void place_papers(SceneLayout& at, const bench::Scene& scene) {
  constexpr std::size_t most = 2;
  const std::size_t count = scene.papers.size();
  for (std::size_t i = count - std::min(count, most); i < count; ++i) {
    const bench::SeenPaper& paper = scene.papers[i];
    const double row = static_cast<double>(count - 1 - i);
    const double wide = 0.024 * static_cast<double>(std::max<std::size_t>(paper.pads.size(), 3));
    at.test_papers[paper.name] = standing(at.bench, 0.57, 0.994 - 0.024 * row, wide, 0.021);
  }
}

} // namespace

SceneLayout layout(const bench::Scene& scene, const Show& show, const Rect& area) {
  SceneLayout at;
  at.area = area;
  at.bench = area;
  const bool held = std::any_of(scene.vessels.begin(), scene.vessels.end(),
                                [&](const bench::SeenVessel& v) { return v.name == show.in_hand; });
  if (held) {
    at.hand = area;
    at.hand.w = std::floor(std::clamp(area.w * 0.34F, 180.0F, area.h * 0.62F));
    at.hand.x = std::floor(area.x + area.w - at.hand.w);
    at.bench.w = at.hand.x - area.x;
  }
  at.rack = standing(at.bench, 0.335, 0.665, 0.63, 0.30);
  at.bath = standing(at.bench, 0.775, 0.90, 0.165, 0.235);
  at.bath_thermometer = {at.bath.x + at.bath.w * 0.88F, at.bath.y - at.bath.h * 0.45F, at.bath.w * 0.05F,
                         at.bath.h * 1.25F};
  at.burner = standing(at.bench, 0.925, 0.955, 0.12, 0.26);
  at.flame = standing(at.bench, 0.925, 0.70, 0.12, 0.20);
  const double card_w = 0.062;
  for (std::size_t i = 0; i < 3; ++i) {
    at.cards[i] = standing(at.bench, 0.485 + 0.073 * static_cast<double>(i), 0.945, card_w, 0.15);
  }
  at.lamp = standing(at.bench, 0.89, 0.20, 0.20, 0.18);
  const double tube_scale = std::min(at.rack.h * 1.05 / 151.0, at.rack.w * 0.94 / 12 / 19.0);
  place_tubes(at, scene, tube_scale);
  place_others(at, scene, std::min(at.bench.h * 0.235 / 150.0, at.bench.w * 0.13 / 66.0));
  place_bottles(at, scene);
  place_papers(at, scene);
  place_hand(at, scene, show);
  return at;
}

} // namespace matula::render
