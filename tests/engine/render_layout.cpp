#include "engine/render/damage.hpp"
#include "engine/render/label.hpp"
#include "engine/render/layout.hpp"
#include "engine/render/lettering.hpp"
#include "tests/engine/render_samples.hpp"

#include <catch2/catch.hpp>

using namespace matula;
using namespace matula::render;

TEST_CASE("tubes stand apart in the rack, inside the bench") {
  const auto scene = samples::bench_scene();
  const SceneLayout at = layout(scene, Show(), {0, 0, 1280, 800});
  for (int i = 1; i <= 12; ++i) {
    const Rect one = at.vessels.at("tube-" + std::to_string(i));
    REQUIRE(one.x >= at.bench.x);
    REQUIRE(one.y + one.h <= at.bench.y + at.bench.h);
    for (int k = i + 1; k <= 12; ++k) {
      REQUIRE_FALSE(overlap(one, at.vessels.at("tube-" + std::to_string(k))));
    }
  }
  REQUIRE(at.hand.empty());
}

TEST_CASE("the large view takes its own part and keeps proportions at several sizes") {
  const auto scene = samples::bench_scene();
  Show show;
  show.in_hand = "tube-2";
  for (const auto& [w, h] : {std::pair{1280, 800}, {1920, 1080}, {1000, 700}}) {
    const SceneLayout at = layout(scene, show, {40, 20, static_cast<float>(w), static_cast<float>(h)});
    REQUIRE_FALSE(overlap(at.bench, at.hand));
    REQUIRE(at.hand_vessel.w / at.hand_scale_px_mm == Approx(16).epsilon(1e-3));
    REQUIRE(at.hand_bottom_px < at.hand.y + at.hand.h);
    // The liquid's surface is in the view.
    REQUIRE(at.hand_bottom_px - 50 * at.hand_scale_px_mm > at.hand.y);
    REQUIRE(at.hand_scale_px_mm > 6);
  }
}

TEST_CASE("bottles, burner, bath and cards do not hide one another") {
  const auto scene = samples::bench_scene();
  const SceneLayout at = layout(scene, Show(), {0, 0, 900, 800});
  std::vector<Rect> places{at.burner, at.bath, at.cards[0], at.cards[1], at.cards[2]};
  for (const auto& [key, r] : at.reagents) {
    places.push_back(r);
  }
  for (const char* name : {"specimen", "jar", "water"}) {
    places.push_back(at.vessels.at(name));
  }
  for (std::size_t i = 0; i < places.size(); ++i) {
    for (std::size_t k = i + 1; k < places.size(); ++k) {
      REQUIRE_FALSE(overlap(places[i], places[k]));
    }
  }
}

TEST_CASE("damage names what changed and nothing else") {
  Damage damage;
  const Rect whole{0, 0, 100, 100};
  std::vector<Item> items{{"a", {0, 0, 10, 10}, 1, [] {}}, {"b", {50, 50, 10, 10}, 1, [] {}}};
  REQUIRE(damage.since_last(items, whole).size() == 2);
  REQUIRE(damage.since_last(items, whole).empty());
  items[1].touches.x = 70;
  const auto moved = damage.since_last(items, whole);
  REQUIRE(moved.size() == 2); // Where it was and where it is.
  items.pop_back();
  const auto gone = damage.since_last(items, whole);
  REQUIRE(gone.size() == 1);
  REQUIRE(gone[0] == Rect{70, 50, 10, 10});
}

TEST_CASE("a float's marks run down the stem in equal steps of specific volume") {
  REQUIRE(mark_depth_mm(1.0, 54, 1.06) == Approx(0));
  REQUIRE(mark_depth_mm(1.06, 54, 1.06) == Approx(54));
  const double first = mark_depth_mm(1.001, 54, 1.06);
  const double last = 54 - mark_depth_mm(1.059, 54, 1.06);
  REQUIRE(first > last); // Divisions close up downwards, as on a real stem.
  REQUIRE(first / last == Approx(1.06 * 1.059 / 1.001).epsilon(1e-6));
}

TEST_CASE("words of a label break where they become largest") {
  const auto lettering = Lettering::load();
  REQUIRE(lettering);
  const FittedLabel tall = fit_label(*lettering, "Distilled water", 50, 60, 28);
  REQUIRE(tall.lines == std::vector<std::string>{"Distilled", "water"});
  const FittedLabel flat = fit_label(*lettering, "Distilled water", 300, 20, 28);
  REQUIRE(flat.lines == std::vector<std::string>{"Distilled water"});
  for (const std::string& line : tall.lines) {
    REQUIRE(lettering->width(line, tall.size_px) <= 50 + 1e-6);
  }
  REQUIRE(lettering->width(flat.lines.front(), flat.size_px) <= 300 + 1e-6);
  REQUIRE(tall.size_px > 10);
  const FittedLabel strength = fit_label(*lettering, "Guaiac 2 %", 40, 60, 28);
  REQUIRE(strength.lines == std::vector<std::string>{"Guaiac", "2 %"}); // The sign stays with its number.
  REQUIRE(fit_label(*lettering, "", 50, 60, 28).lines.empty());
}

TEST_CASE("tubes stand in the order of their numbers, and tags before their vessels") {
  const auto scene = samples::bench_scene();
  const SceneLayout at = layout(scene, Show(), {0, 0, 900, 800});
  for (int i = 1; i < 12; ++i) {
    REQUIRE(at.vessels.at("tube-" + std::to_string(i)).x < at.vessels.at("tube-" + std::to_string(i + 1)).x);
  }
  for (const std::string name : {"specimen", "jar", "water"}) {
    REQUIRE_FALSE(overlap(at.paper.at("tag:" + name), at.vessels.at(name)));
  }
}
