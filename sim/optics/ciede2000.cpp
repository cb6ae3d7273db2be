#include "sim/optics/colour.hpp"

#include <cmath>
#include <numbers>

namespace matula::optics {

namespace {

constexpr double degree = std::numbers::pi / 180.0;

double seventh_root_weight(double chroma) {
  const double c7 = std::pow(chroma, 7);
  constexpr double seven_25 = 6103515625.0; // 25^7
  return std::sqrt(c7 / (c7 + seven_25));
}

/// Hue angle in degrees, 0..360; 0 for a grey.
double hue_deg(double a, double b) {
  if (a == 0 && b == 0) {
    return 0;
  }
  const double h = std::atan2(b, a) / degree;
  return h < 0 ? h + 360 : h;
}

/// Difference going the short way round.
double hue_step(double from, double to) {
  const double step = to - from;
  if (step > 180) {
    return step - 360;
  }
  return step < -180 ? step + 360 : step;
}

double mean_hue(double one, double other) {
  const double sum = one + other;
  if (std::fabs(one - other) <= 180) {
    return sum / 2;
  }
  return sum < 360 ? (sum + 360) / 2 : (sum - 360) / 2;
}

/// Rotation that couples chroma and hue in the blues.
double blue_rotation(double hue, double chroma) {
  const double z = (hue - 275) / 25;
  return -std::sin(60 * degree * std::exp(-z * z)) * 2 * seventh_root_weight(chroma);
}

} // namespace

// Sharma, Wu and Dalal, Color Res. Appl. 30 (2005) 21.
double ciede2000(const Lab& one, const Lab& other) {
  const double mean_ab = (std::hypot(one.a, one.b) + std::hypot(other.a, other.b)) / 2;
  const double stretch = 1 + 0.5 * (1 - seventh_root_weight(mean_ab));
  const double c1 = std::hypot(one.a * stretch, one.b);
  const double c2 = std::hypot(other.a * stretch, other.b);
  const double h1 = hue_deg(one.a * stretch, one.b);
  const double h2 = hue_deg(other.a * stretch, other.b);
  const bool grey = c1 * c2 == 0;

  const double dl = other.l - one.l;
  const double dc = c2 - c1;
  const double dh = grey ? 0 : 2 * std::sqrt(c1 * c2) * std::sin(hue_step(h1, h2) / 2 * degree);

  const double l = (one.l + other.l) / 2;
  const double c = (c1 + c2) / 2;
  const double h = grey ? h1 + h2 : mean_hue(h1, h2);
  const double t = 1 - 0.17 * std::cos((h - 30) * degree) + 0.24 * std::cos(2 * h * degree) +
                   0.32 * std::cos((3 * h + 6) * degree) - 0.20 * std::cos((4 * h - 63) * degree);
  const double l50 = (l - 50) * (l - 50);
  const double vl = dl / (1 + 0.015 * l50 / std::sqrt(20 + l50));
  const double vc = dc / (1 + 0.045 * c);
  const double vh = dh / (1 + 0.015 * c * t);
  return std::sqrt(vl * vl + vc * vc + vh * vh + blue_rotation(h, c) * vc * vh);
}

} // namespace matula::optics
