#pragma once

#include "sim/optics/spectrum.hpp"

#include <array>

namespace matula::optics {

/// CIE 1931 tristimulus values; Y = 1 is the white card under the lamp in use.
struct Xyz {
  double x = 0;
  double y = 0;
  double z = 0;
};

/// Linear-light sRGB primaries; a displayable colour lies in 0..1.
struct LinearRgb {
  double r = 0;
  double g = 0;
  double b = 0;
};

/// CIE 1976 L*a*b*.
struct Lab {
  double l = 0;
  double a = 0;
  double b = 0;
};

enum class Lamp { Daylight, Indoor };

/// Observer and lamps, loaded once from the assets.
struct Colorimetry {
  std::array<Spectrum, 3> observer{}; ///< CIE 1931 2 degree x, y, z bar.
  std::array<Spectrum, 2> lamp{};     ///< Relative power, indexed by Lamp.
};

/// Tristimulus values of light with relative spectrum `reflected` (0..1 of the card's own light) under
/// `lamp`.
[[nodiscard]] Xyz to_xyz(const Spectrum& reflected, const Colorimetry& colorimetry, Lamp lamp);

/// White point of the lamp, Y = 1.
[[nodiscard]] Xyz white_point(const Colorimetry& colorimetry, Lamp lamp);

/// White of the display: CIE D65 for the 2 degree observer, Y = 1.
inline constexpr Xyz d65_white{0.95047, 1.0, 1.08883};

/// Moves a colour seen under a lamp of white `lamp_white` to the display's D65 white, as an eye fully adapted
/// to the lamp sees it (Bradford transform, Lam 1985; the white card stays white).
[[nodiscard]] Xyz adapt_to_display(const Xyz& colour, const Xyz& lamp_white);

[[nodiscard]] Lab to_lab(const Xyz& colour, const Xyz& white);
[[nodiscard]] Xyz from_lab(const Lab& lab, const Xyz& white);

/// CIEDE2000 colour difference (Sharma, Wu and Dalal 2005), kL = kC = kH = 1.
[[nodiscard]] double ciede2000(const Lab& one, const Lab& other);

/// Weber contrast of luminance, (seen - surround) / surround; about 0.01 to 0.02 is just visible in good
/// light. The surround must not be black.
[[nodiscard]] double weber_contrast(const Xyz& seen, const Xyz& surround);

/// D65 XYZ to linear sRGB; components leave 0..1 when the colour lies outside the display's gamut.
[[nodiscard]] LinearRgb to_linear_rgb(const Xyz& d65_colour);

/// Linear sRGB to D65 XYZ.
[[nodiscard]] Xyz from_linear_rgb(const LinearRgb& colour);

/// Brings a colour into the display's gamut by reducing chroma at constant lightness and hue (of Oklab, whose
/// hue lines stay straight in the blues), never by clipping channels. Brighter than white becomes white.
[[nodiscard]] LinearRgb to_display(const Xyz& d65_colour);

/// sRGB transfer function, linear 0..1 to encoded 0..1.
[[nodiscard]] double encode_srgb(double linear);

/// The way back: encoded 0..1 to linear 0..1.
[[nodiscard]] double decode_srgb(double encoded);

} // namespace matula::optics
