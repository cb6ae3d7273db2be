#pragma once

namespace matula::instrument {

/// A weighted glass float with a paper scale, 1.000 at the top of the scale downwards.
struct Urinometer {
  double mass_g = 0;
  double bulb_volume_ml = 0;          ///< Volume below the 1.000 mark, cold.
  double bulb_diameter_mm = 0;
  double bulb_length_mm = 0;
  double stem_diameter_mm = 0;
  double scale_length_mm = 0;         ///< Between 1.000 and scale_end.
  double scale_end = 1.060;
  double calibration_c = 15;
  double zero_error = 0;              ///< Reading in distilled water at calibration_c, less 1.000.
  double glass_expansion_per_k = 25e-6; ///< Cubic; ISO 1768:1975 conventional value for soda-lime glass.
};

/// State of a float that has been lowered into a jar.
struct Float {
  double depth_offset_mm = 0;         ///< Above (+) or below its rest position while it bobs.
  double speed_mm_s = 0;
  double spin_per_s = 0;
  double lean_mm = 0;                 ///< Sideways distance from the axis.
  bool touches_wall = false;
  double bubble_volume_ml = 0;        ///< Air held on the bulb.
  bool grounded = false;              ///< Too little liquid: the bulb stands on the bottom.
};

/// What the scale shows at the plane of the liquid's surface, by Archimedes: the true reading of an eye level with it.
struct ScaleView {
  double reading_at_surface = 1;      ///< Bottom of the meniscus, eye at the right height, what the wall and bubbles do included.
  double reading_at_meniscus_top = 1; ///< Where the liquid meets the stem.
  double parallax_per_mm = 0;         ///< Change of the apparent reading for each mm the eye is above the surface.
  double surface_tension_mn_m = 72;
};

} // namespace matula::instrument
