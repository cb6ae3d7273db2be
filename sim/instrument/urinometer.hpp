#pragma once

namespace matula::instrument {

/// What one particular float does beyond Archimedes.
struct FloatHabits {
  double reading_distance_mm = 250; ///< Eye to stem: the conventional near point.
  double lowered_above_mm = 4;      ///< Height above its rest at which the hand lets go.
  double damping = 0.15;            ///< Share of critical damping while it bobs.
  double added_mass_share = 0.3;    ///< Liquid carried along while it bobs.
  double spin_per_s = 1.5;          ///< Turns a second when spun between the fingers.
  double spin_seconds = 3;          ///< In which the spin falls to 1/e.
  double wall_shift_low = 0.002;    ///< Relative density by which wall contact misleads, least and most.
  double wall_shift_high = 0.005;
  double bubble_shift_low =
      0.001; ///< Relative density by which air on an unwiped bulb misleads, least and most.
  double bubble_shift_high = 0.003;
};

/// A weighted glass float with a paper scale, 1.000 at the top of the scale downwards.
struct Urinometer {
  double mass_g = 0;
  double bulb_volume_ml = 0; ///< Volume below the 1.000 mark, cold.
  double bulb_diameter_mm = 0;
  double bulb_length_mm = 0; ///< From its lowest point to the last mark of the scale.
  double stem_diameter_mm = 0;
  double scale_length_mm = 0; ///< Between 1.000 and scale_end.
  double scale_end = 1.060;
  double calibration_c = 15;
  double zero_error = 0;                ///< Reading in distilled water at calibration_c, less 1.000.
  double glass_expansion_per_k = 25e-6; ///< Cubic; ISO 1768:1975 conventional value for soda-lime glass.
  FloatHabits habits;
};

/// The liquid a float is lowered into.
struct Bath {
  double density_kg_m3 = 1000;
  double temperature_c = 20;
  double surface_tension_mn_m = 72;
  double volume_ml = 0;
  double inner_diameter_mm = 0;
};

/// State of a float that has been lowered into a jar.
struct Float {
  double depth_offset_mm = 0; ///< Above (+) or below its rest position while it bobs.
  double speed_mm_s = 0;
  double spin_per_s = 0;
  double lean_mm = 0; ///< Sideways distance from the axis.
  bool touches_wall = false;
  double wall_shift_mm = 0;    ///< By which friction at the wall keeps it too high (+) or too low.
  double bubble_volume_ml = 0; ///< Air held on the bulb.
  bool grounded = false;       ///< Too little liquid: the bulb stands on the bottom.
};

/// What the scale shows at the plane of the liquid's surface, by Archimedes: the true reading of an eye level
/// with it.
struct ScaleView {
  double reading_at_surface =
      1; ///< Bottom of the meniscus, eye at the right height, what the wall and bubbles do included.
  double reading_at_meniscus_top = 1; ///< Where the liquid meets the stem.
  double parallax_per_mm = 0; ///< Change of the apparent reading for each mm the eye is above the surface.
  double surface_tension_mn_m = 72;
};

/// Random numbers in 0..1 for one lowering: which way and how far wall and bubbles mislead.
struct Chance {
  double wall_side = 0.5;
  double wall_size = 0.5;
  double bubble_size = 0.5;
};

/// A float let go a little above its rest. Unless `wiped` it carries air down; unless `spun` it leans on the
/// wall.
[[nodiscard]] Float lower(const Urinometer& urinometer, const Bath& bath, bool wiped, bool spun,
                          const Chance& chance);

/// Frees it from the wall and sets it turning.
void spin(Float& state, const Urinometer& urinometer);

/// Lets it bob and turn for `seconds`. Exact for any step: two halves give the same as the whole.
void advance(Float& state, const Urinometer& urinometer, const Bath& bath, double seconds);

[[nodiscard]] ScaleView read_scale(const Urinometer& urinometer, const Float& state, const Bath& bath);

/// Least volume (mL) in which the float swims free.
[[nodiscard]] double needed_volume_ml(const Urinometer& urinometer, const Bath& bath);

/// Height of the liquid (mm) with the float in it, on a flat bottom.
[[nodiscard]] double level_with_float_mm(const Urinometer& urinometer, const Float& state, const Bath& bath);

} // namespace matula::instrument
