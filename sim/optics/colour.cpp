#include "sim/optics/colour.hpp"

#include <cmath>

namespace matula::optics {

namespace {

// CIE 15: the cube root gives way to a line below (6/29)^3.
constexpr double lab_epsilon = 216.0 / 24389.0;
constexpr double lab_kappa = 24389.0 / 27.0;

double lab_curve(double ratio) {
  return ratio > lab_epsilon ? std::cbrt(ratio) : (lab_kappa * ratio + 16.0) / 116.0;
}

double lab_curve_inverse(double f) {
  const double cube = f * f * f;
  return cube > lab_epsilon ? cube : (116.0 * f - 16.0) / lab_kappa;
}

/// Cone-like responses of the Bradford transform (Lam 1985).
Xyz to_bradford(const Xyz& c) {
  return {0.8951 * c.x + 0.2664 * c.y - 0.1614 * c.z, -0.7502 * c.x + 1.7135 * c.y + 0.0367 * c.z,
          0.0389 * c.x - 0.0685 * c.y + 1.0296 * c.z};
}

Xyz from_bradford(const Xyz& c) {
  return {0.9869929 * c.x - 0.1470543 * c.y + 0.1599627 * c.z,
          0.4323053 * c.x + 0.5183603 * c.y + 0.0492912 * c.z,
          -0.0085287 * c.x + 0.0400428 * c.y + 0.9684867 * c.z};
}

} // namespace

Xyz to_xyz(const Spectrum& reflected, const Colorimetry& colorimetry, Lamp lamp) {
  const Spectrum& power = colorimetry.lamp[static_cast<std::size_t>(lamp)];
  const auto& bar = colorimetry.observer;
  Xyz sum;
  double white = 0;
  for (std::size_t i = 0; i < band_count; ++i) {
    const double light = reflected[i] * power[i];
    sum.x += light * bar[0][i];
    sum.y += light * bar[1][i];
    sum.z += light * bar[2][i];
    white += power[i] * bar[1][i];
  }
  return {sum.x / white, sum.y / white, sum.z / white};
}

Xyz white_point(const Colorimetry& colorimetry, Lamp lamp) {
  return to_xyz(flat(1), colorimetry, lamp);
}

Xyz adapt_to_display(const Xyz& colour, const Xyz& lamp_white) {
  const Xyz seen = to_bradford(colour);
  const Xyz from = to_bradford(lamp_white);
  const Xyz to = to_bradford(d65_white);
  return from_bradford({seen.x * to.x / from.x, seen.y * to.y / from.y, seen.z * to.z / from.z});
}

Lab to_lab(const Xyz& colour, const Xyz& white) {
  const double fx = lab_curve(colour.x / white.x);
  const double fy = lab_curve(colour.y / white.y);
  const double fz = lab_curve(colour.z / white.z);
  return {116.0 * fy - 16.0, 500.0 * (fx - fy), 200.0 * (fy - fz)};
}

Xyz from_lab(const Lab& lab, const Xyz& white) {
  const double fy = (lab.l + 16.0) / 116.0;
  return {white.x * lab_curve_inverse(fy + lab.a / 500.0), white.y * lab_curve_inverse(fy),
          white.z * lab_curve_inverse(fy - lab.b / 200.0)};
}

double weber_contrast(const Xyz& seen, const Xyz& surround) {
  return (seen.y - surround.y) / surround.y;
}

} // namespace matula::optics
