#include "engine/render/bench_view.hpp"
#include "engine/render/gl.hpp"
#include "engine/render/offscreen.hpp"
#include "engine/render/picture.hpp"
#include "tests/engine/render_samples.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace matula;
using namespace matula::render;
using appearance::Appearance;
using appearance::Card;

namespace {

const std::filesystem::path assets_folder = std::filesystem::path(MATULA_SOURCE_DIR) / "assets";

Picture tubes(const std::vector<Appearance>& looks, int width = 400, int height = 600) {
  const auto picture = tube_picture(assets_folder, looks, width, height);
  INFO((picture ? std::string() : picture.error()));
  REQUIRE(picture);
  return *picture;
}

/// Mean green code over a rectangle.
double mean(const Picture& p, int x, int y, int w, int h) {
  double sum = 0;
  for (int row = y; row < y + h; ++row) {
    for (int col = x; col < x + w; ++col) {
      sum += p.at(col, row)[1];
    }
  }
  return sum / (w * h);
}

/// Range of the green code down a column.
int swing(const Picture& p, int x, int from, int to) {
  int low = 255;
  int high = 0;
  for (int y = from; y < to; ++y) {
    low = std::min<int>(low, p.at(x, y)[1]);
    high = std::max<int>(high, p.at(x, y)[1]);
  }
  return high - low;
}

} // namespace

TEST_CASE("the white card is white and the black card dark") {
  const Picture p = tubes({samples::clear_tube(Card::White), samples::clear_tube(Card::Black)});
  for (int k = 0; k < 3; ++k) {
    REQUIRE(p.at(25, 300)[k] == 255);
    REQUIRE(p.at(225, 300)[k] <= 16);
  }
}

TEST_CASE("dithering keeps a step of a fifth of a per cent alive on average") {
  const auto grey = [](double y) { return samples::tube(50, samples::grey(y), samples::grey(0.01), 1.0); };
  const Picture p = tubes({grey(0.500), grey(0.501)});
  const double step = mean(p, 295, 300, 32, 160) - mean(p, 95, 300, 32, 160);
  // One thousandth in linear light at 0.5 is 0.15 of a code: derivative of the sRGB curve there is 0.6.
  REQUIRE(step == Approx(0.15).margin(0.06));
}

TEST_CASE("a trace stands out of a clear tube on the black card") {
  const auto on_black = [](double y) {
    auto looks = samples::tube(50, samples::grey(0.9), samples::grey(y), 0.98);
    looks.view.card = Card::Black;
    return looks;
  };
  const Picture p = tubes({on_black(0.006), on_black(0.026)});
  REQUIRE(mean(p, 295, 300, 32, 160) - mean(p, 95, 300, 32, 160) > 15);
}

TEST_CASE("print shows through a clear tube and is gone behind an opaque one") {
  const Picture p = tubes({samples::clear_tube(Card::Printed), samples::opaque_tube(Card::Printed)});
  REQUIRE(swing(p, 108, 260, 480) > 120);
  REQUIRE(swing(p, 308, 260, 480) <= 4);
}

TEST_CASE("print that keeps half its contrast is drawn with half") {
  auto looks = samples::tube(50, samples::grey(0.8), samples::grey(0.01), 0.5);
  looks.view.card = Card::Printed;
  const Picture p = tubes({looks});
  int low = 255;
  for (int y = 250; y < 480; ++y) {
    low = std::min<int>(low, p.at(208, y)[1]);
  }
  const double dark = std::pow((low / 255.0 + 0.055) / 1.055, 2.4);
  REQUIRE(dark / 0.8 == Approx(0.5).margin(0.06));
}

TEST_CASE("the surface is drawn at the liquid's level") {
  const bench::Scene scene = samples::bench_scene();
  Show show;
  show.in_hand = "tube-2";
  const auto p = bench_picture(assets_folder, scene, show, 1000, 700);
  REQUIRE(p);
  const SceneLayout at = layout(scene, show, {0, 0, 1000, 700});
  const int x = static_cast<int>(at.hand.x + at.hand.w / 2);
  const int level = static_cast<int>(at.hand_bottom_px - 50 * at.hand_scale_px_mm);
  int darkest = 0;
  for (int y = level - 60; y < level + 60; ++y) {
    darkest = p->at(x, y)[1] < p->at(x, darkest)[1] ? y : darkest;
  }
  REQUIRE(std::abs(darkest - level) < 1.5 * at.hand_scale_px_mm);
}

TEST_CASE("a float shows the line the surface cuts, and a higher eye shows another") {
  bench::Scene scene = samples::bench_scene();
  bench::SeenFloat afloat;
  afloat.vessel = "jar";
  afloat.urinometer_without_zero_error.stem_diameter_mm = 6;
  afloat.urinometer_without_zero_error.scale_length_mm = 54;
  afloat.urinometer_without_zero_error.bulb_diameter_mm = 20;
  afloat.urinometer_without_zero_error.bulb_length_mm = 42;
  afloat.scale.reading_at_surface = 1.0205;
  afloat.scale.reading_at_meniscus_top = 1.0190;
  afloat.scale.parallax_per_mm = 0.0002;
  scene.floating = afloat;
  Show show;
  show.in_hand = "jar";
  const SceneLayout at = layout(scene, show, {0, 0, 1000, 700});
  const auto dark_rows = [&](const Picture& p) {
    std::vector<int> rows;
    const int x = static_cast<int>(at.hand.x + at.hand.w / 2 + at.hand_scale_px_mm * 0.4F);
    const int level = static_cast<int>(at.hand_bottom_px - 100 * at.hand_scale_px_mm);
    for (int y = level - 160; y < level - 20; ++y) {
      if (p.at(x, y)[1] < 120) {
        rows.push_back(y);
      }
    }
    return rows;
  };
  const auto level_eye = bench_picture(assets_folder, scene, show, 1000, 700);
  show.eye_mm = 10;
  const auto high_eye = bench_picture(assets_folder, scene, show, 1000, 700);
  REQUIRE(level_eye);
  REQUIRE(high_eye);
  const auto before = dark_rows(*level_eye);
  const auto after = dark_rows(*high_eye);
  REQUIRE_FALSE(before.empty());
  REQUIRE_FALSE(after.empty());
  // Reading 0.002 more at the surface lifts every mark by two divisions of about 0.9 mm.
  REQUIRE(before.back() - after.back() == Approx(2 * 54 / 60.0 * at.hand_scale_px_mm).margin(4));
}

TEST_CASE("a float alone in its jar shows its scale at the surface") {
  bench::SeenFloat afloat;
  afloat.urinometer_without_zero_error.stem_diameter_mm = 6;
  afloat.urinometer_without_zero_error.scale_length_mm = 54;
  afloat.urinometer_without_zero_error.bulb_diameter_mm = 20;
  afloat.urinometer_without_zero_error.bulb_length_mm = 42;
  afloat.scale.reading_at_surface = afloat.scale.reading_at_meniscus_top = 1.0205;
  const bench::Scene scene = samples::bench_scene();
  const auto jar = std::find_if(scene.vessels.begin(), scene.vessels.end(),
                                [](const bench::SeenVessel& one) { return one.name == "jar"; });
  REQUIRE(jar != scene.vessels.end());
  constexpr int width = 600;
  constexpr int height = 520;
  const auto drawn = [&] {
    const auto context = OffscreenContext::create();
    REQUIRE(context);
    auto view = BenchView::create(assets_folder);
    REQUIRE(view);
    const Target target = Target::make(width, height, GL_RGBA8);
    const unsigned texture = view->float_in_jar(0, jar->looks, afloat, width, height);
    target.bind();
    glFramebufferTexture2D(GL_FRAMEBUFFER, GL_COLOR_ATTACHMENT0, GL_TEXTURE_2D, texture, 0);
    return read_back(width, height);
  };
  const double scale = width * 0.80 / (jar->looks.inner_diameter_mm + 2 * jar->looks.wall_mm);
  // The rows of the marks, beside the axis and above the surface, which is at 0.6 of the height.
  const auto marks = [&](const Picture& p) {
    std::vector<int> rows;
    for (int y = 20; y < static_cast<int>(0.6 * height) - 12; ++y) {
      if (p.at(width / 2 + static_cast<int>(scale * 0.4), y)[1] < 120) {
        rows.push_back(y);
      }
    }
    return rows;
  };
  const auto before = marks(drawn());
  afloat.scale.reading_at_surface = afloat.scale.reading_at_meniscus_top = 1.0225;
  const auto after = marks(drawn());
  REQUIRE(before.size() > 3);
  REQUIRE_FALSE(after.empty());
  REQUIRE(before != after); // Two divisions of the scale further out of the liquid.
}

TEST_CASE("two runs draw the same bytes") {
  auto looks = samples::opaque_tube(Card::White);
  looks.boiling = 0.5;
  looks.steam = 0.5;
  looks.sediment = {5, samples::grey(0.5), 0.5};
  REQUIRE(tubes({looks}).rgba == tubes({looks}).rgba);
}

TEST_CASE("a picture redrawn in part is the picture drawn afresh") {
  bench::Scene scene = samples::bench_scene();
  Show show;
  show.in_hand = "tube-1";
  show.seconds = 2;
  Picture in_steps;
  {
    const auto context = OffscreenContext::create();
    REQUIRE(context);
    auto view = BenchView::create(assets_folder);
    REQUIRE(view);
    const Target target = Target::make(900, 600, GL_RGBA8);
    const auto draw = [&] {
      target.bind();
      view->draw(scene, show, layout(scene, show, {0, 0, 900, 600}), 600);
    };
    draw();
    scene.flame_on = true;
    show.marked = "two";
    draw();
    show.marked.clear();
    scene.vessels[4].place = bench::Place::Flame;
    scene.vessels[4].looks.boiling = 0.6;
    scene.vessels[3].looks.view.card = Card::Black;
    show.seconds = show.boil_seconds = 3;
    draw();
    scene.vessels[5].looks = samples::opaque_tube(Card::White, 30);
    draw();
    in_steps = read_back(900, 600);
    REQUIRE(glGetError() == GL_NO_ERROR);
  }
  const auto afresh = bench_picture(assets_folder, scene, show, 900, 600);
  REQUIRE(afresh);
  REQUIRE(in_steps.rgba == afresh->rgba);
}

TEST_CASE("a missing shader folder is named in the error") {
  const auto picture = tube_picture("/nowhere", {samples::clear_tube(Card::White)}, 100, 100);
  REQUIRE_FALSE(picture);
  REQUIRE(picture.error().find("/nowhere/shaders") != std::string::npos);
}
