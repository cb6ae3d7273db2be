// Colours in words. The named colours and their sRGB values are those of W3C, CSS Color Module Level 4,
// section 6.1; which word a person would give them is their own name.
#include "sim/reading/hue_name.hpp"

#include <catch2/catch.hpp>

using namespace matula;

namespace {

std::string named(int r, int g, int b) {
  const auto linear = [](int channel) { return optics::decode_srgb(channel / 255.0); };
  return reading::hue_name(
      optics::to_lab(optics::from_linear_rgb({linear(r), linear(g), linear(b)}), optics::d65_white));
}

} // namespace

TEST_CASE("the named colours of the web go by their names") {
  CHECK(named(255, 0, 0) == "red");
  CHECK(named(255, 165, 0) == "orange");
  CHECK(named(255, 215, 0) == "yellow"); // gold
  CHECK(named(255, 255, 0) == "yellow");
  CHECK(named(255, 255, 224) == "pale yellow");    // lightyellow
  CHECK(named(173, 255, 47) == "yellowish green"); // greenyellow
  CHECK(named(0, 128, 0) == "green");
  CHECK(named(0, 100, 0) == "green");          // darkgreen, not very dark
  CHECK(named(0, 128, 128) == "bluish green"); // teal
  CHECK(named(0, 0, 255) == "blue");
  CHECK(named(70, 130, 180) == "blue");   // steelblue
  CHECK(named(0, 0, 128) == "dark blue"); // navy
  CHECK(named(128, 0, 128) == "dark purple");
  CHECK(named(139, 69, 19) == "brown"); // saddlebrown
  CHECK(named(160, 82, 45) == "brown"); // sienna
  CHECK(named(128, 128, 128) == "grey");
  CHECK(named(255, 255, 255) == "white");
  CHECK(named(0, 0, 0) == "black");
}

TEST_CASE("encoding and decoding of sRGB undo each other, and so do its two matrices") {
  for (int i = 0; i <= 255; ++i) {
    CHECK(optics::encode_srgb(optics::decode_srgb(i / 255.0)) == Approx(i / 255.0).margin(1e-12));
  }
  const optics::LinearRgb some{0.2, 0.5, 0.8};
  const auto back = optics::to_linear_rgb(optics::from_linear_rgb(some));
  CHECK(back.r == Approx(some.r).margin(2e-6)); // matrices printed to seven places
  CHECK(back.g == Approx(some.g).margin(2e-6));
  CHECK(back.b == Approx(some.b).margin(2e-6));
}
