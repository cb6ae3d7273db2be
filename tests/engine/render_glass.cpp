#include "engine/render/bands.hpp"
#include "engine/render/glass.hpp"
#include "tests/engine/render_samples.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace matula;
using namespace matula::render;

TEST_CASE("a cylinder of water brings near-axis rays to the focus of the lens formula") {
  // f = n R / (2 (n - 1)) from the axis, the textbook formula for a thick cylindrical or ball lens.
  const Cylinder water{8, 7.999, water_index};
  const double focus_mm = water_index * 8 / (2 * (water_index - 1));
  const double x = 0.01;
  REQUIRE(card_x_mm(water, x, focus_mm) / x == Approx(0).margin(2e-3));
  REQUIRE(card_x_mm(water, x, 2 * focus_mm) / x == Approx(-1).margin(4e-3));
}

TEST_CASE("a tube holding air bends light hardly at all near the axis, one holding water much") {
  const Cylinder air{8, 7, 1.0};
  const Cylinder water{8, 7, water_index};
  REQUIRE(std::abs(card_x_mm(air, 1, 11) - 1) < 0.15);
  REQUIRE(card_x_mm(water, 1, 11) < 0.5);
  REQUIRE(turn_rad(water, -3) == Approx(-turn_rad(water, 3)));
}

TEST_CASE("past the critical angle the inner wall of an empty tube is a mirror") {
  const Cylinder air{8, 7, 1.0};
  // A ray meeting the inner wall at grazing incidence turns as the mirrored one just beyond it does, and from
  // there on it is thrown outwards by the law of reflection.
  REQUIRE(turn_rad(air, 6.99999) == Approx(turn_rad(air, 7.00001)).margin(0.01));
  const double in = std::asin(7.05 / 8);
  const double refracted = std::asin(7.05 / 8 / glass_index);
  const double at_wall = std::asin(7.05 / glass_index / 7);
  REQUIRE(turn_rad(air, 7.05) == Approx(2 * (in - refracted) - 2 * (std::acos(0.0) - at_wall)));
  REQUIRE(turn_rad(air, 7.05) < -0.5);
}

TEST_CASE("a thing on the axis plane seems wider apart by the index of the liquid") {
  const Cylinder water{8, 7, water_index};
  REQUIRE(seen_x_mm(water, 0.5, 0) / 0.5 == Approx(water_index).epsilon(0.02));
  for (double x = -6.9; x < 7; x += 0.3) {
    for (double z = -1; z <= 1; z += 0.5) {
      REQUIRE(std::abs(seen_x_mm(water, x, z)) < 8);
    }
  }
}

TEST_CASE("bands cover a vessel without gap and know what lies in them") {
  auto looks = samples::clear_tube(appearance::Card::White, 50);
  looks.sediment.height_mm = 6;
  looks.clot_fraction = 0.3;
  looks.clot_from_mm = 20;
  looks.clot_to_mm = 35;
  const auto cut = bands(looks, -2, 151);
  REQUIRE(cut.front().from_mm == -2);
  REQUIRE(cut.back().to_mm == 151);
  for (std::size_t i = 1; i < cut.size(); ++i) {
    REQUIRE(cut[i].from_mm == cut[i - 1].to_mm);
  }
  for (const Band& b : cut) {
    const bool holds_level = b.from_mm <= 50 && b.to_mm >= 50;
    REQUIRE((b.part == Band::Part::Surface) == holds_level);
    REQUIRE(b.bed == (b.from_mm < 6));
    REQUIRE(b.clot == (b.from_mm < 35 && b.to_mm > 20));
    REQUIRE_FALSE(b.hot);
  }
}

TEST_CASE("an empty vessel is one dry band") {
  const auto cut = bands(appearance::Appearance(), -2, 151);
  REQUIRE(cut.size() == 1);
  REQUIRE(cut[0].part == Band::Part::Dry);
}

TEST_CASE("a step of a fifth of a per cent in one row is worth drawing again, a thousandth of that is not") {
  const auto looks = samples::clear_tube(appearance::Card::Black);
  auto changed = looks;
  changed.rows[3].on_black[0].y += 0.002;
  REQUIRE(look_hash(changed) != look_hash(looks));
  changed = looks;
  changed.rows[3].on_black[0].y += 2e-6;
  REQUIRE(look_hash(changed) == look_hash(looks));
}

TEST_CASE("rows keep their colours and follow the liquid's height") {
  auto looks = samples::clear_tube(appearance::Card::White, 20);
  const RowImage image = row_image(looks, 0.5);
  REQUIRE(image.rows == 41);
  const auto colour = shown(looks.rows[10].on_white[0]);
  const auto at = static_cast<std::size_t>(10 * row_columns * 4);
  REQUIRE(image.texels[at] == Approx(colour[0]).margin(1e-5));
  REQUIRE(image.texels[at + 2] == Approx(colour[2]).margin(1e-5));
}
