#include "sim/optics/band_shape.hpp"
#include "sim/optics/colour.hpp"
#include "sim/optics/oklab.hpp"

#include <catch2/catch.hpp>
#include <cmath>

using namespace matula::optics;

namespace {

double hue(const Oklab& c) {
  return std::atan2(c.b, c.a);
}

} // namespace

TEST_CASE("A colour the display can show passes unchanged") {
  const Xyz inside{0.3, 0.32, 0.2};
  const LinearRgb wanted = to_linear_rgb(inside);
  const LinearRgb shown = to_display(inside);
  CHECK(shown.r == wanted.r);
  CHECK(shown.g == wanted.g);
  CHECK(shown.b == wanted.b);
}

TEST_CASE("A colour outside keeps hue and lightness and loses only chroma") {
  // Spectral-like blue, green, orange and a copper blue.
  for (const Xyz& colour :
       {Xyz{0.15, 0.10, 0.95}, Xyz{0.15, 0.45, 0.10}, Xyz{0.55, 0.40, 0.001}, Xyz{0.229, 0.279, 1.046}}) {
    const Oklab wanted = to_oklab(to_linear_rgb(colour));
    const LinearRgb shown = to_display(colour);
    const Oklab got = to_oklab(shown);
    CAPTURE(colour.x, colour.y, colour.z);
    REQUIRE(std::min({to_linear_rgb(colour).r, to_linear_rgb(colour).g, to_linear_rgb(colour).b}) < 0);
    CHECK(std::min({shown.r, shown.g, shown.b}) >= 0);
    CHECK(std::max({shown.r, shown.g, shown.b}) <= 1);
    CHECK(got.l == Approx(wanted.l).margin(1e-4));
    CHECK(std::fabs(std::remainder(hue(got) - hue(wanted), 2 * 3.14159265358979)) < 1e-3);
    CHECK(std::hypot(got.a, got.b) < std::hypot(wanted.a, wanted.b));
    CHECK(std::hypot(got.a, got.b) > 0.2 * std::hypot(wanted.a, wanted.b)); // reduced, not thrown away
  }
}

TEST_CASE("Brighter than white is white, no light is black") {
  CHECK(to_display({1.2, 1.3, 1.4}).g == 1);
  CHECK(to_display({0, 0, 0}).r == 0);
}

TEST_CASE("Oklab and CIELAB come back") {
  const LinearRgb c{0.2, 0.7, 0.4};
  const LinearRgb back = from_oklab(to_oklab(c));
  CHECK(back.r == Approx(c.r).margin(1e-6));
  CHECK(back.g == Approx(c.g).margin(1e-6));
  CHECK(back.b == Approx(c.b).margin(1e-6));
  for (const Xyz& colour : {Xyz{0.3, 0.32, 0.2}, Xyz{0.002, 0.001, 0.004}}) {
    const Xyz again = from_lab(to_lab(colour, d65_white), d65_white);
    CHECK(again.x == Approx(colour.x));
    CHECK(again.y == Approx(colour.y));
    CHECK(again.z == Approx(colour.z));
  }
}

TEST_CASE("Encoding rises from 0 to 1") {
  CHECK(encode_srgb(0) == 0);
  CHECK(encode_srgb(1) == Approx(1));
  CHECK(encode_srgb(0.2140411) == Approx(0.5).margin(1e-6)); // middle grey of IEC 61966-2-1
  double last = -1;
  for (double v = 0; v <= 1; v += 0.001) {
    CHECK(encode_srgb(v) > last);
    last = encode_srgb(v);
  }
}

TEST_CASE("Band shapes: peak, half height and slope are where they were asked for") {
  const Spectrum band = gaussian_band(100, 500, 40);
  CHECK(band[12] == Approx(100)); // 500 nm
  CHECK(band[10] == Approx(50));  // 480 nm
  CHECK(band[14] == Approx(50));  // 520 nm
  const Spectrum ion = gaussian_band_per_cm(45, 700, 5200);
  CHECK(ion[32] == Approx(45));
  const double half_nm = 1e7 / (1e7 / 700.0 + 2600); // 592.3 nm
  CHECK(ion[21] > 22.5 * (half_nm < 590 ? 1 : 0));
  CHECK(ion[21] < 22.5); // 590 nm lies just beyond half height
  CHECK(ion[22] > 22.5); // 600 nm just inside
  const Spectrum tail = exponential_tail(2, 420, 0.02);
  CHECK(tail[4] == Approx(2));
  CHECK(tail[9] == Approx(2 * std::exp(-1.0)));
  CHECK(sum(band, tail)[12] == Approx(band[12] + tail[12]));
}

TEST_CASE("Interpolation between given points holds the ends") {
  const std::vector<std::pair<double, double>> points{{400, 1}, {420, 3}, {700, 3}};
  const Spectrum s = interpolated(points);
  CHECK(s[0] == 1);
  CHECK(s[3] == Approx(2));
  CHECK(s[35] == 3);
}

TEST_CASE("Weber contrast") {
  CHECK(weber_contrast({0, 0.0306, 0}, {0, 0.03, 0}) == Approx(0.02));
}
