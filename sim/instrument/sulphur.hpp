#pragma once

#include <array>
#include <cstddef>

namespace matula::instrument {

/// Grains differ in how easily water wets them; so many classes of it.
inline constexpr std::size_t wetting_classes = 9;

/// Flowers of sulphur and how they lie on a liquid.
struct Sulphur {
  double pinch_mg = 5;
  double grain_radius_mm = 0.05;
  double density_kg_m3 = 2000;
  double critical_tension_mn_m = 61; ///< A grain is wetted wholly by liquids of less (Zisman).
  double critical_spread_mn_m = 1;   ///< Standard deviation between grains.
  double cosine_per_mn_m = 0.035;    ///< Fall of the contact angle's cosine for each mN/m above that.
  double tap_g = 30;                 ///< Acceleration of a tap, in weights.
  double sinking_per_s = 0.05;       ///< Of grains at the very edge of wetting.
  double sinking_mn_m = 0.8;         ///< Tension above it that makes sinking e times rarer.
};

/// A pinch on a surface, milligrams by wetting class, from the grains hardest to wet to the easiest.
struct Strewn {
  std::array<double, wetting_classes> floating_mg{};
  double strewn_mg = 0;
  double at_s = 0; ///< When it was strewn.

  [[nodiscard]] double floating() const;
};

[[nodiscard]] Strewn strew(const Sulphur& sulphur);

/// Critical tension of a class, mN/m.
[[nodiscard]] double critical_tension(const Sulphur& sulphur, std::size_t wetting_class);

/// Whether the surface carries a grain of the class that weighs `weights` times itself: the pull of the
/// surface round the grain, at most 2 pi r tension sin2(angle/2), against its weight in the liquid.
[[nodiscard]] bool carried(const Sulphur& sulphur, std::size_t wetting_class, double tension_mn_m,
                           double weights = 1);

/// Lets grains go: at once those that are not carried, the others the more slowly the less they are wetted.
/// Returns the milligrams that sank.
double sink(Strewn& strewn, const Sulphur& sulphur, double tension_mn_m, double seconds, double weights = 1);

} // namespace matula::instrument
