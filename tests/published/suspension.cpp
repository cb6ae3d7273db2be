// Checks of clustering and settling against published laws.
#include "sim/column/aggregate.hpp"
#include "sim/column/settle.hpp"
#include "sim/matter/density.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace matula;

namespace {

double clusters_per_m3(const matter::Population& p, const column::CollisionTable& table, double volume_ml) {
  double n = 0;
  for (std::size_t i = 0; i < matter::size_bins; ++i) {
    n += p.grams[i] / table.mass_g[i];
  }
  return n / (volume_ml * 1e-6);
}

/// Spheres that meet by Brownian motion alone and always stick; radii made equal so that the kernel is
/// constant.
column::CollisionTable constant_kernel(const matter::ParticleKind& kind) {
  column::CollisionTable table = column::collision_table(kind);
  for (auto& row : table.brownian) {
    row.fill(table.brownian[0][0]);
  }
  return table;
}

} // namespace

TEST_CASE("Smoluchowski: half-time 3 eta/(4 k T n0) is 16.22 s for 1e16 /m3 in water at 25 C") {
  // M. von Smoluchowski, Z. phys. Chem. 92 (1917) 129: N/N0 = 1/(1 + t/half-time), constant kernel.
  matter::ParticleKind kind;
  kind.shear_efficiency = 0;
  kind.settling_efficiency = 0;
  const column::CollisionTable table = constant_kernel(kind);
  column::Encounter e;
  e.volume_ml = 1;
  e.temperature_c = 25;
  e.viscosity_pa_s = 0.890e-3;
  e.shear_per_s = 0;
  const double half_time_s = 3 * 0.890e-3 / (4 * 1.380649e-23 * 298.15 * 1e16);
  CHECK(half_time_s == Approx(16.22).margin(0.02));
  for (const auto& [half_times, left] : {std::pair{1.0, 0.5}, {3.0, 0.25}, {10.0, 0.0909}, {30.0, 0.0323}}) {
    matter::Population p;
    p.grams[0] = 1e16 * 1e-6 * table.mass_g[0];
    column::aggregate(p, kind, table, e, half_times * half_time_s);
    // 1 % of the mass may be misplaced in a step: the solver's tolerance.
    CHECK(clusters_per_m3(p, table, 1) / 1e16 == Approx(left).epsilon(0.02));
    CHECK(p.total_g() == Approx(1e16 * 1e-6 * table.mass_g[0]).epsilon(1e-12));
  }
}

TEST_CASE("Stokes: a sphere of 10 um diameter, 50 kg/m3 heavier than water at 25 C, falls 3.06 um/s") {
  // G.G. Stokes 1851: v = 2/9 (difference) g r^2 / eta, with eta 0.890 mPa s.
  matter::ParticleKind kind;
  kind.solid_density_kg_m3 = 998.2 + 50;
  CHECK(column::stokes_unit_speed(kind, 5e-6, 1) / 0.890e-3 == Approx(3.06e-6).epsilon(0.002));
}

TEST_CASE("Richardson and Zaki: crowding slows the fall by (1 - phi/phi_max)^4.65") {
  // J.F. Richardson and W.N. Zaki, Trans. Inst. Chem. Eng. 32 (1954) 35.
  CHECK(column::hindrance(0) == 1);
  CHECK(column::hindrance(0.035) == Approx(std::pow(0.9, 4.65)).epsilon(1e-9));
  CHECK(column::hindrance(0.175) == Approx(0.0398).epsilon(0.01));
  CHECK(column::hindrance(0.4) == 0);
}

TEST_CASE("clusters of more primaries are larger and looser, as their dimension says") {
  matter::ParticleKind kind;
  kind.primary_radius_m = 1e-7;
  kind.fractal_dimension = 2;
  kind.core_radius_m = 1e-6;
  CHECK(kind.bin_radius_m(0) == Approx(1e-7));
  CHECK(kind.bin_radius_m(2) == Approx(2e-7)); // 4 primaries, R = r n^(1/2)
  // Above the core (100 primaries) density is constant: eight times the mass is twice the radius.
  CHECK(kind.bin_radius_m(20) == Approx(2 * kind.bin_radius_m(17)));
}
