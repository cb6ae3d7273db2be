#pragma once

#include "sim/matter/particle.hpp"

#include <array>

namespace matula::column {

/// Power of (Hamaker / viscosity, shear and size) in the sticking of curved trajectories: van de Ven and
/// Mason 1977.
inline constexpr double curved_exponent = 0.18;

/// Encounter rates between the size classes of one kind of particle, for unit temperature/viscosity, shear
/// and 1/viscosity, so that a step only scales and adds them. Rows are the larger partner, columns the
/// smaller (j <= i).
struct CollisionTable {
  using Pairs = std::array<std::array<double, matter::size_bins>, matter::size_bins>;
  using Sizes = std::array<double, matter::size_bins>;
  Pairs brownian{}; ///< m3/s at (kelvin / (Pa s)) = 1: Smoluchowski.
  Pairs shear{};    ///< m3/s at G = 1 /s and 1 Pa s; scales as G (eta G)^-curved_exponent.
  Pairs settling{}; ///< m3/s at 1 Pa s: overtaking in free fall.
  Sizes mass_g{};   ///< One cluster.
  Sizes radius_m{};
  Sizes packing{};    ///< Solid share of a cluster's own volume.
  Sizes unit_speed{}; ///< Stokes speed at 1 Pa s, m/s, downwards.
  bool sticks = true; ///< False for kinds that never cluster.
};

[[nodiscard]] CollisionTable collision_table(const matter::ParticleKind& kind);

/// Stokes speed (m/s, downwards) in water at a viscosity of 1 Pa s of a cluster with the given share of
/// solid.
[[nodiscard]] double stokes_unit_speed(const matter::ParticleKind& kind, double radius_m, double packing);

} // namespace matula::column
