#include "sim/column/settle.hpp"

#include "sim/column/aggregate.hpp"
#include "sim/matter/density.hpp"

#include <algorithm>
#include <cmath>

namespace matula::column {

namespace {

using matter::size_bins;

constexpr double hindrance_power = 4.65;  // Richardson and Zaki 1954
constexpr double crowded_fraction = 0.35; // clusters touch everywhere; fitted here
constexpr double wettest_bed_share = 0.5; // the bed takes at most this share of the bottom layer a step
constexpr double slowest_share = 1e-6;    // of a class a step; less is not worth moving
constexpr double pa_s_per_mpa_s = 1e-3;
constexpr double quiet_shear_per_s = 1;     // loose flocs part in stronger movement; fitted here
constexpr double loose_dimension = 2.1;     // of flocs that form by slow sticking; common value
constexpr double reference_fraction = 1e-4; // of ParticleKind::loose_floc_radius_m
constexpr double mm_per_m = 1000;
constexpr double kg_m3_per_g_ml = 1000;

/// How fast things fall in one layer, common to all classes: 1/viscosity with crowding, in 1/(Pa s). What
/// stands next to the bed joins it without having to push liquid past itself.
double fall_factor(const matter::Mixture& layer, const Chemistry& chemistry, bool at_the_bed) {
  double crowding = 0;
  for (const auto& [kind, population] : layer.populations.present()) {
    crowding += cluster_volume_fraction(population, chemistry.catalogue->particles[kind],
                                        chemistry.collisions[kind], layer.volume_ml);
  }
  const double free = 1 / (matter::water_viscosity_mpa_s(layer.temperature_c) * pa_s_per_mpa_s);
  return at_the_bed ? free : free * hindrance(crowding);
}

/// How much faster grains fall for hanging together in loose flocs: Stokes's law for a fractal of grains.
double floc_gain(double grain_radius_m, double floc_radius_m) {
  return floc_radius_m > grain_radius_m ? std::pow(floc_radius_m / grain_radius_m, loose_dimension - 1) : 1.0;
}

/// Radius of the loose flocs of one kind in one layer, m; 0 where there are none.
double floc_radius_m(const matter::Mixture& layer, std::size_t k, const Chemistry& chemistry,
                     double shear_per_s) {
  const matter::ParticleKind& kind = chemistry.catalogue->particles[k];
  if (kind.loose_floc_radius_m <= 0 || shear_per_s > quiet_shear_per_s || layer.volume_ml <= 0) {
    return 0;
  }
  const double fraction =
      layer.populations[k].suspended_g() / (kind.solid_density_kg_m3 / kg_m3_per_g_ml) / layer.volume_ml;
  return kind.loose_floc_radius_m * std::sqrt(fraction / reference_fraction);
}

/// One kind in every layer, from the bottom up.
using Standing = std::vector<matter::Population*>;

/// One class through all layers, from the top down (implicit, so no step is too long); returns what reached
/// the bottom.
double fall(const Standing& layers, std::size_t bin, const CollisionTable& table,
            const std::vector<double>& factors, const std::vector<double>& floc_m,
            const std::vector<Extent>& heights, double seconds) {
  double arriving_g = 0;
  for (std::size_t i = layers.size(); i-- > 0;) {
    double& grams = layers[i]->grams[bin];
    const double before = grams + arriving_g;
    const double gain = floc_gain(table.radius_m[bin], floc_m[i]);
    const double leaving =
        gain * table.unit_speed[bin] * factors[i] * mm_per_m * seconds / heights[i].thickness_mm();
    arriving_g = leaving > slowest_share ? before - before / (1 + leaving) : 0.0;
    grams = before - arriving_g;
  }
  return arriving_g;
}

/// The same upwards for solids lighter than water; they gather under the surface.
void rise(const Standing& layers, std::size_t bin, double unit_speed, const std::vector<double>& factors,
          const std::vector<Extent>& heights, double seconds) {
  double arriving_g = 0;
  for (std::size_t i = 0; i < layers.size(); ++i) {
    double& grams = layers[i]->grams[bin];
    const double before = grams + arriving_g;
    const bool surface = i + 1 == layers.size();
    const double leaving = -unit_speed * factors[i] * mm_per_m * seconds / heights[i].thickness_mm();
    arriving_g = !surface && leaving > slowest_share ? before - before / (1 + leaving) : 0.0;
    grams = before - arriving_g;
  }
}

/// Volume the bed needs for its solids and the liquid between them, mL.
double bed_volume_ml(const matter::Mixture& bed, const Chemistry& chemistry) {
  constexpr double packing_c = 20; // of ParticleKind::bed_packing
  double volume_ml = 0;
  for (const auto& [k, population] : bed.populations.present()) {
    if (population.empty()) {
      continue;
    }
    const matter::ParticleKind& kind = chemistry.catalogue->particles[k];
    const double warmer_k =
        std::clamp(bed.temperature_c - packing_c, -20.0, 20.0); // as far as beds were measured
    const double densest_bed = kind.bed_packing / (1 + kind.bed_swelling_per_k * warmer_k);
    const double solid_g_per_ml = kind.solid_density_kg_m3 / kg_m3_per_g_ml;
    const auto& packing = chemistry.collisions[k].packing;
    for (std::size_t i = 0; i < size_bins; ++i) {
      volume_ml += population.grams[i] / (solid_g_per_ml * std::min(packing[i], densest_bed));
    }
    volume_ml += population.clot_g / (solid_g_per_ml * std::min(packing[size_bins - 1], densest_bed));
  }
  return volume_ml;
}

void wet_bed(Column& column, const Chemistry& chemistry) {
  matter::Mixture& bed = column.sediment;
  matter::Mixture& bottom = column.layers.front();
  const double wanted_ml = bed_volume_ml(bed, chemistry);
  if (wanted_ml > bed.volume_ml) {
    move_liquid(bottom, bed, std::min(wanted_ml - bed.volume_ml, wettest_bed_share * bottom.volume_ml));
  } else {
    move_liquid(bed, bottom, bed.volume_ml - wanted_ml);
  }
}

/// By kind: whether any layer has some of it.
std::vector<char> held(const Column& column, std::size_t kinds) {
  std::vector<char> any(kinds, 0);
  for (const matter::Mixture& layer : column.layers) {
    for (const auto& [kind, population] : layer.populations.present()) {
      any[kind] = any[kind] != 0 || !population.empty() ? 1 : 0;
    }
  }
  return any;
}

bool holds(const Standing& layers, std::size_t bin) {
  return std::any_of(layers.begin(), layers.end(),
                     [bin](const matter::Population* here) { return here->grams[bin] > 0; });
}

} // namespace

double hindrance(double volume_fraction) {
  const double free = 1 - volume_fraction / crowded_fraction;
  return free > 0 ? std::pow(free, hindrance_power) : 0.0;
}

void settle(Column& column, const Chemistry& chemistry, const std::vector<Extent>& heights,
            const std::vector<double>& shear_per_s, double seconds, double gravity) {
  std::vector<double> factors;
  factors.reserve(column.layers.size());
  for (const matter::Mixture& layer : column.layers) {
    factors.push_back(gravity * fall_factor(layer, chemistry, factors.empty()));
  }
  const std::vector<char> kinds = held(column, chemistry.collisions.size());
  for (std::size_t k = 0; k < kinds.size(); ++k) {
    const CollisionTable& table = chemistry.collisions[k];
    if (kinds[k] == 0) {
      continue;
    }
    Standing layers;
    layers.reserve(column.layers.size());
    for (matter::Mixture& layer : column.layers) {
      layers.push_back(&layer.populations.of(k));
    }
    std::vector<double> floc_m;
    floc_m.reserve(column.layers.size());
    for (std::size_t i = 0; i < column.layers.size(); ++i) {
      floc_m.push_back(floc_radius_m(column.layers[i], k, chemistry, shear_per_s[i]));
    }
    for (std::size_t bin = 0; bin < size_bins; ++bin) {
      if (!holds(layers, bin)) {
        continue;
      }
      if (table.unit_speed[bin] >= 0) {
        column.sediment.populations.of(k).grams[bin] +=
            fall(layers, bin, table, factors, floc_m, heights, seconds);
      } else {
        rise(layers, bin, table.unit_speed[bin], factors, heights, seconds);
      }
    }
  }
  wet_bed(column, chemistry);
}

} // namespace matula::column
