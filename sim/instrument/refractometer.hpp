#pragma once

namespace matula::instrument {

/// A hand refractometer with a relative-density scale for urine: a thin film of liquid on a prism, and the
/// edge of the shadow against a printed scale.
struct Refractometer {
  double zero_index = 1.3330;       ///< Index printed as 1.000, sodium light, 20 °C, against air.
  double index_per_density = 0.395; ///< Rise of the index for a relative density higher by 1.
  double division = 0.001;          ///< Of the scale; read to half of it.
  double scale_end = 1.050;
  double zero_error = 0;          ///< Reading of distilled water less 1.000.
  bool compensated = true;        ///< Corrects itself for water's change of index with temperature,
  double compensated_from_c = 10; ///< between these.
  double compensated_to_c = 37;
  double film_ml = 0.05;
  double kept_share = 0.3;     ///< Of an unwiped old film, in the new one.
  double glancing_path_mm = 3; ///< Way of the light through the film.
  double blur_division =
      8; ///< Divisions over which the edge spreads when the film lets no light straight through.
  double lost_contrast = 0.2; ///< Share of straight light below which no edge is seen.
};

/// What is seen in the eyepiece.
struct ShadowEdge {
  double reading = 1;  ///< Where the middle of the edge stands, zero error included, unrounded.
  double spread = 0;   ///< Width of the edge on the scale.
  double contrast = 1; ///< 0..1
  bool beyond_end = false;
};

/// `index` of the film at the prism's temperature, `extinction_per_mm` of the film (natural logarithm).
[[nodiscard]] ShadowEdge read_edge(const Refractometer& refractometer, double index, double prism_c,
                                   double extinction_per_mm);

} // namespace matula::instrument
