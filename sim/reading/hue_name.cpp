#include "sim/reading/hue_name.hpp"

#include <array>
#include <cmath>

namespace matula::reading {

namespace {

struct Span {
  double to_deg; ///< Hue angle at which the name ends.
  const char* name;
};
// CIELAB: red of a display 40 degrees, its yellow 103, green 136, blue-green 196, blue 306, purple 328.
constexpr std::array<Span, 13> hues{{{20, "purplish red"},
                                     {48, "red"},
                                     {60, "reddish orange"},
                                     {77, "orange"},
                                     {88, "orange yellow"},
                                     {112, "yellow"},
                                     {127, "yellowish green"},
                                     {163, "green"},
                                     {225, "bluish green"},
                                     {307, "blue"},
                                     {321, "violet"},
                                     {345, "purple"},
                                     {360, "purplish red"}}};

constexpr double colourless_chroma = 7;
constexpr double pale_chroma = 38;
constexpr double pale_lightness = 72;
constexpr double brown_lightness = 52; // Below it no eye calls an orange orange.
constexpr double dark_lightness = 32;

std::string grey_name(double lightness) {
  return lightness > 92   ? "white"
         : lightness > 72 ? "light grey"
         : lightness > 40 ? "grey"
         : lightness > 14 ? "dark grey"
                          : "black";
}

} // namespace

std::string hue_name(const optics::Lab& colour) {
  const double chroma = std::hypot(colour.a, colour.b);
  if (chroma < colourless_chroma) {
    return grey_name(colour.l);
  }
  constexpr double degrees = 180 / 3.14159265358979323846;
  double hue = std::atan2(colour.b, colour.a) * degrees;
  hue += hue < 0 ? 360 : 0;
  const Span* span = hues.begin();
  while (span + 1 != hues.end() && hue >= span->to_deg) {
    ++span;
  }
  const bool orange_like = hue >= hues[1].to_deg && hue < hues[4].to_deg;
  if (orange_like && colour.l < brown_lightness) {
    return colour.l < dark_lightness ? "dark brown" : "brown";
  }
  const std::string name = span->name;
  if (colour.l < dark_lightness) {
    return "dark " + name;
  }
  return colour.l > pale_lightness && chroma < pale_chroma ? "pale " + name : name;
}

} // namespace matula::reading
