#include "sim/column/collisions.hpp"

#include "sim/optics/nature.hpp"

#include <algorithm>
#include <cmath>

namespace matula::column {

namespace {

using matter::size_bins;

constexpr double pi = 3.14159265358979323846;
constexpr double boltzmann_j_per_k = 1.380649e-23; // SI, exact
constexpr double water_kg_m3 = 998.2;              // at 20 °C; only differences to the solid matter here
constexpr double hamaker_j = 1e-20;                // order of protein and oxide in water, from memory

/// Sticking of curved trajectories at G = 1 /s and 1 Pa s: 0.8 (A / 36 eta G R^3)^0.18, van de Ven and Mason
/// 1977.
double curved_efficiency(double radius_m) {
  return 0.8 * std::pow(hamaker_j / (36.0 * radius_m * radius_m * radius_m), curved_exponent);
}

} // namespace

double stokes_unit_speed(const matter::ParticleKind& kind, double radius_m, double packing) {
  const double difference_kg_m3 = packing * (kind.solid_density_kg_m3 - water_kg_m3);
  return 2.0 / 9.0 * difference_kg_m3 * nature::gravity_m_s2 * radius_m * radius_m;
}

CollisionTable collision_table(const matter::ParticleKind& kind) {
  CollisionTable table;
  const double primary_m3 = std::pow(kind.primary_radius_m, 3);
  for (std::size_t i = 0; i < size_bins; ++i) {
    table.mass_g[i] = kind.bin_mass_g(i);
    const double r = kind.bin_radius_m(i);
    table.radius_m[i] = r;
    table.packing[i] = std::min(1.0, std::ldexp(primary_m3, static_cast<int>(i)) / (r * r * r));
    table.unit_speed[i] = stokes_unit_speed(kind, r, table.packing[i]);
  }
  for (std::size_t i = 0; i < size_bins; ++i) {
    for (std::size_t j = 0; j <= i; ++j) {
      const double ri = table.radius_m[i];
      const double rj = table.radius_m[j];
      const double reach = ri + rj;
      table.brownian[i][j] =
          kind.brownian_efficiency * 2.0 * boltzmann_j_per_k / 3.0 * reach * reach / (ri * rj);
      table.shear[i][j] = kind.shear_efficiency * 4.0 / 3.0 * reach * reach * reach * curved_efficiency(ri);
      table.settling[i][j] =
          kind.settling_efficiency * pi * reach * reach * std::abs(table.unit_speed[i] - table.unit_speed[j]);
    }
  }
  table.sticks = kind.brownian_efficiency > 0 || kind.shear_efficiency > 0 || kind.settling_efficiency > 0;
  return table;
}

} // namespace matula::column
