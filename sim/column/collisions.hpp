#pragma once

#include "sim/matter/particle.hpp"

#include <array>

namespace matula::column {

/// Encounter rates between the size classes of one kind of particle, for unit temperature/viscosity, shear and
/// gravity/viscosity, so that a step only scales and adds them. Rows are the larger partner, columns the smaller (j <= i).
struct CollisionTable {
  using Pairs = std::array<std::array<float, matter::size_bins>, matter::size_bins>;
  Pairs brownian{};   ///< m3/s at (kelvin / (Pa s)) = 1.
  Pairs shear{};      ///< m3/s at G = 1 /s, before the size-limited sticking law.
  Pairs settling{};   ///< m3/s at g (density difference included) / viscosity = 1.
  std::array<double, matter::size_bins> mass_g{};      ///< One cluster.
  std::array<double, matter::size_bins> radius_m{};
  std::array<double, matter::size_bins> packing{};     ///< Solid share of a cluster's own volume.
};

[[nodiscard]] CollisionTable collision_table(const matter::ParticleKind& kind);

} // namespace matula::column
