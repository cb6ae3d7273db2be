#pragma once

#include "sim/optics/light_step.hpp"

#include <cstddef>
#include <cstdint>
#include <vector>

namespace matula::optics {

/// Radiance of what surrounds a tube, by the direction light comes from as seen from the tube; the white card
/// is 1.
struct Surround {
  double card = 1;        ///< Behind the tube, within `card_half_angle_deg` of straight back.
  double beside_card = 1; ///< The rest of the back half.
  double room = 1;        ///< The front half.
  double observer =
      1; ///< The dark figure of the observer, within `observer_half_angle_deg` of straight ahead.
  double card_half_angle_deg = 63;
  double observer_half_angle_deg = 20;

  [[nodiscard]] double radiance(const Direction& direction) const;
};

/// White card behind the tube, lit by the room: the card reflects nine tenths, the bench beside it half as
/// much.
[[nodiscard]] Surround white_card();
/// Black flock paper of 0.4 % of the white card's luminance, tube lit from the front and the sides.
[[nodiscard]] Surround black_card();

/// A tube of liquid with scattering particles. Lengths in units of the inside diameter.
struct LitCylinder {
  double wall = 1.0 / 14.0;    ///< Glass thickness.
  double liquid_index = 1.333; ///< Water at 20 °C, sodium light.
  double glass_index = 1.5;    ///< Soda-lime glass near 1.51, borosilicate 1.47; common values.
  double asymmetry = 0.8;      ///< Henyey-Greenstein g the table is made with.
  double end_distance = 4;     ///< Light that has wandered so far along the tube has left through an end.
};

/// Radiance towards the eye for each absorption, in the order given.
struct CylinderLight {
  std::vector<double> on_white;
  std::vector<double> on_black;
};

/// Traces `paths` lines of sight back from a distant eye whose line passes `offset` (0 axis .. 1 inside wall,
/// as seen from outside) beside the axis. `reduced_scatter` is mu_s (1 - g) d, `absorptions` are mu_a d.
/// Mirror images of the room in the glass of the unscattered line are left out: the eye knows them for glare.
/// Same seed, same result.
[[nodiscard]] CylinderLight trace_cylinder(const LitCylinder& tube, double offset, double reduced_scatter,
                                           const std::vector<double>& absorptions, const Surround& white,
                                           const Surround& black, std::size_t paths, std::uint64_t seed);

/// Length of the refracted line of sight inside the liquid, in inside diameters.
[[nodiscard]] double chord(const LitCylinder& tube, double offset);

} // namespace matula::optics
