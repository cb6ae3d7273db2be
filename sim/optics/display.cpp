#include "sim/optics/colour.hpp"
#include "sim/optics/oklab.hpp"

#include <algorithm>
#include <cmath>

namespace matula::optics {

namespace {

constexpr double channel_slack = 1e-7; // Rounding of the colour matrices.
constexpr int halvings = 30;

bool fits(const LinearRgb& c) {
  return std::min({c.r, c.g, c.b}) >= -channel_slack && std::max({c.r, c.g, c.b}) <= 1 + channel_slack;
}

LinearRgb trimmed(const LinearRgb& c) {
  return {std::clamp(c.r, 0.0, 1.0), std::clamp(c.g, 0.0, 1.0), std::clamp(c.b, 0.0, 1.0)};
}

} // namespace

LinearRgb to_linear_rgb(const Xyz& c) {
  // IEC 61966-2-1, inverse of the primaries' matrix, as published to seven places.
  return {3.2404542 * c.x - 1.5371385 * c.y - 0.4985314 * c.z,
          -0.9692660 * c.x + 1.8760108 * c.y + 0.0415560 * c.z,
          0.0556434 * c.x - 0.2040259 * c.y + 1.0572252 * c.z};
}

Xyz from_linear_rgb(const LinearRgb& c) {
  // IEC 61966-2-1: the primaries' matrix, to seven places.
  return {0.4124564 * c.r + 0.3575761 * c.g + 0.1804375 * c.b,
          0.2126729 * c.r + 0.7151522 * c.g + 0.0721750 * c.b,
          0.0193339 * c.r + 0.1191920 * c.g + 0.9503041 * c.b};
}

LinearRgb to_display(const Xyz& d65_colour) {
  const LinearRgb wanted = to_linear_rgb(d65_colour);
  if (fits(wanted)) {
    return trimmed(wanted);
  }
  const Oklab full = to_oklab(wanted);
  if (full.l >= 1) {
    return {1, 1, 1};
  }
  if (full.l <= 0) {
    return {0, 0, 0};
  }
  double inside = 0;
  double outside = 1;
  for (int i = 0; i < halvings; ++i) {
    const double share = 0.5 * (inside + outside);
    (fits(from_oklab({full.l, share * full.a, share * full.b})) ? inside : outside) = share;
  }
  return trimmed(from_oklab({full.l, inside * full.a, inside * full.b}));
}

double encode_srgb(double linear) {
  // IEC 61966-2-1.
  const double v = std::clamp(linear, 0.0, 1.0);
  return v <= 0.0031308 ? 12.92 * v : 1.055 * std::pow(v, 1.0 / 2.4) - 0.055;
}

double decode_srgb(double encoded) {
  // IEC 61966-2-1.
  const double v = std::clamp(encoded, 0.0, 1.0);
  return v <= 0.04045 ? v / 12.92 : std::pow((v + 0.055) / 1.055, 2.4);
}

} // namespace matula::optics
