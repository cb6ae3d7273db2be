#include "tests/sim/optics_data.hpp"

#include "sim/optics/colour.hpp"

#include <array>
#include <catch2/catch.hpp>
#include <cmath>

using namespace matula::optics;

namespace {

const Colorimetry colorimetry = matula::tests::load_colorimetry();

struct Pair {
  Lab one;
  Lab other;
  double difference;
};

// Sharma, Wu and Dalal, Color Res. Appl. 30 (2005) 21, table 1, all 34 pairs, printed to four places.
constexpr std::array<Pair, 34> sharma{{
    {{50, 2.6772, -79.7751}, {50, 0, -82.7485}, 2.0425},
    {{50, 3.1571, -77.2803}, {50, 0, -82.7485}, 2.8615},
    {{50, 2.8361, -74.0200}, {50, 0, -82.7485}, 3.4412},
    {{50, -1.3802, -84.2814}, {50, 0, -82.7485}, 1.0000},
    {{50, -1.1848, -84.8006}, {50, 0, -82.7485}, 1.0000},
    {{50, -0.9009, -85.5211}, {50, 0, -82.7485}, 1.0000},
    {{50, 0, 0}, {50, -1, 2}, 2.3669},
    {{50, -1, 2}, {50, 0, 0}, 2.3669},
    {{50, 2.4900, -0.0010}, {50, -2.4900, 0.0009}, 7.1792},
    {{50, 2.4900, -0.0010}, {50, -2.4900, 0.0010}, 7.1792},
    {{50, 2.4900, -0.0010}, {50, -2.4900, 0.0011}, 7.2195},
    {{50, 2.4900, -0.0010}, {50, -2.4900, 0.0012}, 7.2195},
    {{50, -0.0010, 2.4900}, {50, 0.0009, -2.4900}, 4.8045},
    {{50, -0.0010, 2.4900}, {50, 0.0010, -2.4900}, 4.8045},
    {{50, -0.0010, 2.4900}, {50, 0.0011, -2.4900}, 4.7461},
    {{50, 2.5, 0}, {50, 0, -2.5}, 4.3065},
    {{50, 2.5, 0}, {73, 25, -18}, 27.1492},
    {{50, 2.5, 0}, {61, -5, 29}, 22.8977},
    {{50, 2.5, 0}, {56, -27, -3}, 31.9030},
    {{50, 2.5, 0}, {58, 24, 15}, 19.4535},
    {{50, 2.5, 0}, {50, 3.1736, 0.5854}, 1.0000},
    {{50, 2.5, 0}, {50, 3.2972, 0}, 1.0000},
    {{50, 2.5, 0}, {50, 1.8634, 0.5757}, 1.0000},
    {{50, 2.5, 0}, {50, 3.2592, 0.3350}, 1.0000},
    {{60.2574, -34.0099, 36.2677}, {60.4626, -34.1751, 39.4387}, 1.2644},
    {{63.0109, -31.0961, -5.8663}, {62.8187, -29.7946, -4.0864}, 1.2630},
    {{61.2901, 3.7196, -5.3901}, {61.4292, 2.2480, -4.9620}, 1.8731},
    {{35.0831, -44.1164, 3.7933}, {35.0232, -40.0716, 1.5901}, 1.8645},
    {{22.7233, 20.0904, -46.6940}, {23.0331, 14.9730, -42.5619}, 2.0373},
    {{36.4612, 47.8580, 18.3852}, {36.2715, 50.5065, 21.2231}, 1.4146},
    {{90.8027, -2.0831, 1.4410}, {91.1528, -1.6435, 0.0447}, 1.4441},
    {{90.9257, -0.5406, -0.9208}, {88.6381, -0.8985, -0.7239}, 1.5381},
    {{6.7747, -0.2908, -2.4247}, {5.8714, -0.0985, -2.2286}, 0.6377},
    {{2.0776, 0.0795, -1.1350}, {0.9033, -0.0636, -0.5514}, 0.9082},
}};

} // namespace

TEST_CASE("CIEDE2000 gives the published differences, either way round") {
  for (const Pair& pair : sharma) {
    CAPTURE(pair.one.a, pair.one.b, pair.other.a, pair.other.b);
    CHECK(ciede2000(pair.one, pair.other) ==
          Approx(pair.difference).margin(0.00005 + 1e-9)); // rounding of the table
    CHECK(ciede2000(pair.other, pair.one) == Approx(pair.difference).margin(0.00005 + 1e-9));
  }
}

TEST_CASE("White of D65 for the 2 degree observer") {
  // CIE 15 / ASTM E308: 95.047, 100, 108.883. Our 36 bands leave out 735-830 nm and take every second
  // tabulated value: 0.07.
  const Xyz white = white_point(colorimetry, Lamp::Daylight);
  CHECK(white.x * 100 == Approx(95.047).margin(0.07));
  CHECK(white.y * 100 == Approx(100).margin(1e-9));
  CHECK(white.z * 100 == Approx(108.883).margin(0.07));
}

TEST_CASE("White of the indoor lamp") {
  // ASTM E308, illuminant F2, 2 degree observer: 99.186, 100, 67.393. Mercury lines folded into 10 nm bands:
  // 0.5.
  const Xyz white = white_point(colorimetry, Lamp::Indoor);
  CHECK(white.x * 100 == Approx(99.186).margin(0.5));
  CHECK(white.z * 100 == Approx(67.393).margin(0.5));
}

TEST_CASE("Colours of two spectra as an independent program finds them") {
  // Argyll CMS 2.3.1, spec2cie -i D65 -o 1931_2, from the same 36 reflectances. It interpolates between
  // bands: 0.002.
  Spectrum amber{};
  Spectrum blue{};
  for (std::size_t i = 0; i < band_count; ++i) {
    const double nm = wavelength_nm(i);
    amber[i] = std::pow(10.0, -0.8 * 1.4 * std::exp(-0.018 * (nm - 420)));
    const double z = (1e7 / nm - 1e7 / 715) / 5200;
    blue[i] = std::pow(10.0, -45 * 0.063 * 1.4 * std::exp(-4 * std::log(2.0) * z * z));
  }
  const Xyz a = to_xyz(amber, colorimetry, Lamp::Daylight);
  CHECK(a.x == Approx(0.71741).margin(0.002));
  CHECK(a.y == Approx(0.767448).margin(0.002));
  CHECK(a.z == Approx(0.289099).margin(0.002));
  const Xyz b = to_xyz(blue, colorimetry, Lamp::Daylight);
  CHECK(b.x == Approx(0.22942).margin(0.002));
  CHECK(b.y == Approx(0.279431).margin(0.002));
  CHECK(b.z == Approx(1.04601).margin(0.002));
}

TEST_CASE("Red of sRGB in CIELAB") {
  // IEC 61966-2-1 primaries: XYZ 0.4124564, 0.2126729, 0.0193339; Lab 53.24, 80.09, 67.20.
  const Xyz red{0.4124564, 0.2126729, 0.0193339};
  const Lab lab = to_lab(red, d65_white);
  CHECK(lab.l == Approx(53.24).margin(0.006));
  CHECK(lab.a == Approx(80.09).margin(0.006));
  CHECK(lab.b == Approx(67.20).margin(0.006));
  const LinearRgb rgb = to_linear_rgb(red);
  CHECK(rgb.r == Approx(1).margin(1e-5));
  CHECK(rgb.g == Approx(0).margin(1e-5));
  CHECK(rgb.b == Approx(0).margin(1e-5));
}

TEST_CASE("The lamp's white becomes the display's white") {
  for (const Lamp lamp : {Lamp::Daylight, Lamp::Indoor}) {
    const Xyz white = white_point(colorimetry, lamp);
    const Xyz shown = adapt_to_display(white, white);
    CHECK(shown.x == Approx(0.95047).margin(1e-6)); // Bradford matrices are printed to seven places
    CHECK(shown.y == Approx(1).margin(1e-6));
    CHECK(shown.z == Approx(1.08883).margin(1e-6));
  }
}

TEST_CASE("Bradford adaptation from A to D65") {
  // Lindbloom, chromatic adaptation matrices (Bradford, A to D65), applied to the colour 0.4, 0.4, 0.1.
  const Xyz a_white{1.0985, 1.0, 0.35585};
  const Xyz shown = adapt_to_display({0.4, 0.4, 0.1}, a_white);
  CHECK(shown.x == Approx(0.8446965 * 0.4 - 0.1179225 * 0.4 + 0.3948108 * 0.1).margin(2e-5));
  CHECK(shown.y == Approx(-0.1366303 * 0.4 + 1.1041226 * 0.4 + 0.1291718 * 0.1).margin(2e-5));
  CHECK(shown.z == Approx(0.0798489 * 0.4 - 0.1348999 * 0.4 + 3.1924009 * 0.1).margin(2e-5));
}
