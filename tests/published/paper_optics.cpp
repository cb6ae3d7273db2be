// Light in paper: worked values and limits.
#include "sim/optics/kubelka_munk.hpp"
#include "tests/published/paper_support.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace matula;
using namespace matula::test;

TEST_CASE("Kubelka and Munk's deep layer gives its own K/S back") {
  // K/S = (1 - R)^2/(2 R), the function of P. Kubelka and F. Munk 1931, computed by hand for R = 0.5 and 0.8.
  CHECK(optics::deep_reflectance(0.25) == Approx(0.5).epsilon(1e-12));
  CHECK(optics::deep_reflectance(0.025) == Approx(0.8).epsilon(1e-12));
  CHECK(optics::deep_reflectance(0) == 1);
}

TEST_CASE("A layer's limits: no power, no absorption, no backing, great depth") {
  CHECK(optics::layer_reflectance(0, 0, 0.6) == Approx(0.6));
  CHECK(optics::layer_reflectance(0, 0.5, 0.6) == Approx(0.6 * std::exp(-1.0)));
  // Without absorption over black: S X/(S X + 1), Kubelka 1948.
  CHECK(optics::layer_reflectance(3, 0, 0) == Approx(0.75).epsilon(1e-6));
  CHECK(optics::layer_reflectance(1e3, 250, 0) == Approx(0.5).epsilon(1e-9));
  CHECK(optics::layer_reflectance(1e3, 250, 0.9) == Approx(0.5).epsilon(1e-9));
  CHECK(optics::layer_reflectance(2, 1e-12, 0.4) ==
        Approx(optics::layer_reflectance(2, 0, 0.4)).epsilon(1e-6));
}

TEST_CASE("A smooth film of water keeps back half of the light that would leave") {
  // 1 - (1 - 0.066)/1.333^2 = 0.474: J. Lekner and M.C. Dorf 1988 (0.47 for water); by hand.
  CHECK(optics::inside_reflectance(1.333, 0.066) == Approx(0.474).margin(0.001));
  CHECK(optics::through_surface(1, 0, 0.474) == Approx(1));
  CHECK(optics::through_surface(0.6, 0, 0.474) < 0.6);
}

TEST_CASE("Bare paper is white, wet paper is greyer, and without a dye nothing is coloured") {
  const assets::World& world = paper_world();
  paper::PadKind bare = world.papers.front().pads.front();
  bare.bath_mmol_per_l.clear();
  const auto& tables = world.optics.scatter;
  const auto dry = paper::dry_pad(bare, world.catalogue, 22);
  const auto white = lab_of(paper::reflectance(dry, bare, world.catalogue, tables));
  // Writing and filter papers reflect 80-90 %: common value; L* of 0.85 is 94.
  CHECK(white.l > 91);
  CHECK(white.l < 97);
  CHECK(std::abs(white.a) < 1);
  CHECK(white.b < 5);
  auto water = matter::empty_mixture(world.catalogue);
  water.volume_ml = 1;
  water.temperature_c = 22;
  const auto wet = paper::dipped_pad(bare, water, world.chemistry, 22, 0);
  const auto grey = lab_of(paper::reflectance(wet, bare, world.catalogue, tables));
  CHECK(grey.l < white.l - 2);
  CHECK(std::abs(grey.a) < 1);
}
