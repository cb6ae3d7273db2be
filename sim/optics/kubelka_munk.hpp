#pragma once

namespace matula::optics {

// Diffuse light in a flat scattering layer, after P. Kubelka and F. Munk, Z. tech. Phys. 12 (1931) 593, in
// the form of P. Kubelka, J. Opt. Soc. Am. 38 (1948) 448. Scattering power S X and absorbing power K X have
// no unit; a diffuse ray travels twice the layer's thickness, so K is twice the absorption coefficient.

/// Reflectance of a layer over a backing of reflectance `backing` (0..1). Both powers >= 0.
[[nodiscard]] double layer_reflectance(double scattering_power, double absorbing_power, double backing);

/// Reflectance of a layer so deep that nothing shows through: 1 + K/S - sqrt((K/S)^2 + 2 K/S).
[[nodiscard]] double deep_reflectance(double k_over_s);

/// What leaves a body of reflectance `body` through a smooth surface, glare left out: `outside` is the
/// surface's reflectance for light coming in, `inside` for diffuse light going out (J.L. Saunderson, J. Opt.
/// Soc. Am. 32 (1942) 727).
[[nodiscard]] double through_surface(double body, double outside, double inside);

/// Reflectance of a smooth surface for diffuse light that comes from inside a liquid of refractive index
/// `index`, of which `outside` comes back from air: 1 - (1 - outside)/index^2 (brightness over the square of
/// the index is kept). Total reflection in the film is what makes wet things dark (J. Lekner and M.C. Dorf,
/// Appl. Opt. 27 (1988) 1278).
[[nodiscard]] double inside_reflectance(double index, double outside);

} // namespace matula::optics
