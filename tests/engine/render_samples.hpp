#pragma once

#include "sim/bench/scene.hpp"

#include <algorithm>
#include <cmath>
#include <string>

/// Hand-made looks for the renderer's own tests; nothing here comes from chemistry.
namespace matula::samples {

inline optics::Xyz grey(double y) {
  return {0.95047 * y, y, 1.08883 * y};
}
inline optics::Xyz tinted(double y, double x_part, double z_part) {
  return {0.95047 * y * x_part, y, 1.08883 * y * z_part};
}

/// A tube with `level_mm` of one even liquid.
inline appearance::Appearance tube(double level_mm, const optics::Xyz& on_white, const optics::Xyz& on_black,
                                   double print_contrast) {
  appearance::Appearance a;
  a.level_mm = level_mm;
  a.meniscus_rise_mm = 0.9;
  const int rows = 40;
  for (int i = 0; i < rows; ++i) {
    appearance::Row row;
    row.thickness_mm = level_mm / rows;
    row.height_mm = (i + 0.5) * row.thickness_mm;
    for (std::size_t k = 0; k < appearance::lateral_samples; ++k) {
      const double edge = std::pow((static_cast<double>(k) + 0.5) / 8, 4);
      const double w = 1 - 0.18 * edge;
      row.on_white[k] = {on_white.x * w, on_white.y * w, on_white.z * w};
      row.on_black[k] = {on_black.x * w, on_black.y * w, on_black.z * w};
    }
    row.print_contrast = print_contrast;
    row.print_sharp = print_contrast;
    row.print_halo = 0;
    row.opacity = 1 - print_contrast;
    a.rows.push_back(row);
  }
  return a;
}

inline appearance::Appearance clear_tube(appearance::Card card, double level_mm = 50) {
  auto a = tube(level_mm, tinted(0.90, 0.98, 0.72), grey(0.006), 1.0);
  a.view.card = card;
  return a;
}

inline appearance::Appearance opaque_tube(appearance::Card card, double level_mm = 50) {
  auto a = tube(level_mm, tinted(0.62, 1.0, 0.86), tinted(0.55, 1.0, 0.88), 0.0);
  a.view.card = card;
  return a;
}

/// Cup, jar, water and twelve tubes, the first six holding something.
inline bench::Scene bench_scene() {
  bench::Scene scene;
  scene.shelf = {"one", "two", "three", "four", "five", "six"};
  const auto wide = [&](const char* name, double inner_mm, double height_mm, double level_mm) {
    bench::SeenVessel v;
    v.name = name;
    v.looks = clear_tube(appearance::Card::White, level_mm);
    v.looks.inner_diameter_mm = inner_mm;
    v.looks.vessel_height_mm = height_mm;
    v.looks.round_bottom = false;
    scene.vessels.push_back(v);
  };
  wide("specimen", 58, 70, 45);
  wide("jar", 36, 130, 100);
  wide("water", 50, 90, 60);
  for (int i = 1; i <= 12; ++i) {
    bench::SeenVessel v;
    v.name = "tube-" + std::to_string(i);
    if (i <= 6) {
      v.looks = i % 2 == 0 ? clear_tube(appearance::Card::White) : opaque_tube(appearance::Card::White);
    }
    scene.vessels.push_back(v);
  }
  return scene;
}

} // namespace matula::samples
