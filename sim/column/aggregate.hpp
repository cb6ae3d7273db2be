#pragma once

#include "sim/column/collisions.hpp"

namespace matula::column {

/// Conditions in one well-mixed portion that decide how its clusters meet.
struct Encounter {
  double volume_ml = 0;
  double temperature_c = 20;
  double viscosity_pa_s = 1e-3;
  double shear_per_s = 0.4;
  double sticking = 1; ///< 0..1, by pH.
};

/// Share of encounters that stick at this pH and temperature, relative to the best:
/// 10^-((pH - centre)/width)^2, and Arrhenius below 100 °C for solids that have to grow into each other.
[[nodiscard]] double sticking_at(const matter::ParticleKind& kind, double ph, double temperature_c);

/// Lets the clusters of one kind meet, stick and break for `seconds`. Mass of the population is conserved and
/// no class goes negative at any step; the step is halved until a first and a second order answer agree.
void aggregate(matter::Population& population, const matter::ParticleKind& kind, const CollisionTable& table,
               const Encounter& encounter, double seconds);

/// Share of the portion's volume the clusters take up, their own liquid included.
[[nodiscard]] double cluster_volume_fraction(const matter::Population& population,
                                             const matter::ParticleKind& kind, const CollisionTable& table,
                                             double volume_ml);

/// Locks crowded clusters into one clot, or tears a clot apart where the shear is strong.
void gel(matter::Population& population, const matter::ParticleKind& kind, const CollisionTable& table,
         const Encounter& encounter, double seconds);

} // namespace matula::column
