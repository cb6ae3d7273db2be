#include "sim/column/mix.hpp"

#include "sim/optics/nature.hpp"

#include "sim/matter/density.hpp"

#include <algorithm>
#include <cmath>

namespace matula::column {

namespace {

constexpr double mixing_length_share =
    0.05; // of the inside radius: 5 s of swirling half-mixes a tube; fitted here
constexpr double richardson_weight =
    10; // damping of mixing by a stable density step, form of Munk and Anderson 1948
constexpr double richardson_power = 1.5; // same source
constexpr double overturn_weight =
    0.2; // mixing length of unstable liquid, share of the diameter squared; fitted here
constexpr double stable_enough_kg_m3 = 1e-3; // density step below which nothing overturns: solver tolerance
constexpr double inversion_rate_per_s =
    2; // one turn in about half a second brings all to the mean; fitted here
constexpr double lifting_per_strain = 1e-3; // share of the bed lifted by unit strain; fitted here
constexpr double lifting_shear_per_s = 5;   // gentler movement leaves the bed; fitted here
constexpr double kg_m3_per_g_ml = 1000;
/// Of all that is dissolved, at 25 °C: one value, so that the ions keep each other's charge balanced. Between
/// glucose (0.67e-9) and ammonia (1.6e-9), near sodium chloride (1.5e-9): CRC Handbook, from memory.
constexpr double molecular_diffusivity_m2_s = 1.2e-9;
constexpr double diffusivity_at_c = 25;

/// Stokes and Einstein: in proportion to temperature over viscosity.
double molecular_diffusivity_at(double temperature_c) {
  const auto mobility = [](double c) {
    return (c + nature::zero_c_in_kelvin) / matter::water_viscosity_mpa_s(c);
  };
  static const double at_reference = mobility(diffusivity_at_c);
  return molecular_diffusivity_m2_s * mobility(temperature_c) / at_reference;
}

/// Volume exchange over one interface in `seconds` as a share of full mixing of the pair.
double exchanged_share(const VesselShape& shape, double density_step, double apart_m, double shear_per_s,
                       double seconds) {
  const double length_m = mixing_length_share * shape.inner_diameter_mm / 2000;
  double diffusivity_m2_s = length_m * length_m * shear_per_s;
  if (density_step > stable_enough_kg_m3) { // heavy below
    const double buoyancy = nature::gravity_m_s2 * density_step / kg_m3_per_g_ml / apart_m;
    const double richardson = buoyancy / std::max(shear_per_s * shear_per_s, 1e-12);
    diffusivity_m2_s /= std::pow(1 + richardson_weight * richardson, richardson_power);
  } else if (density_step < -stable_enough_kg_m3) {
    const double width_m = shape.inner_diameter_mm / 1000;
    const double frequency_per_s = std::sqrt(nature::gravity_m_s2 * -density_step / kg_m3_per_g_ml / apart_m);
    diffusivity_m2_s += overturn_weight * width_m * width_m * frequency_per_s;
  }
  return 1 - std::exp(-2 * diffusivity_m2_s / (apart_m * apart_m) * seconds);
}

/// The same by molecular diffusion: Fick's law between the middles of two layers of these thicknesses.
double diffused_share(double lower_m, double upper_m, double temperature_c, double seconds) {
  const double diffusivity_m2_s = molecular_diffusivity_at(temperature_c);
  return 1 - std::exp(-2 * diffusivity_m2_s / (lower_m * upper_m) * seconds);
}

void lift_sediment(Column& column, double share) {
  matter::Mixture& bed = column.sediment;
  if (bed.volume_ml <= 0 || share <= 0) {
    return;
  }
  const matter::Mixture lifted = matter::draw(bed, share * bed.volume_ml);
  matter::merge(column.layers.front(), lifted);
}

/// What goes over the interface above one layer in half a step, as shares of full mixing of the pair.
struct Crossing {
  double stirred = 0;  ///< Liquid with all that is in it.
  double diffused = 0; ///< What is dissolved.
};

void exchange(std::vector<matter::Mixture>& layers, std::size_t lower, const Crossing& crossing) {
  constexpr double worth_moving = 1e-9;
  if (crossing.stirred > worth_moving) {
    blend(layers[lower], layers[lower + 1], crossing.stirred, crossing.diffused);
  } else if (crossing.diffused > worth_moving) {
    blend_dissolved(layers[lower], layers[lower + 1], crossing.diffused);
  }
}

/// Brings every layer towards the mean of all.
void turn_over(Column& column, const matter::Catalogue& catalogue, double share) {
  matter::Mixture pool = matter::empty_mixture(catalogue);
  for (matter::Mixture& layer : column.layers) {
    matter::merge(pool, matter::draw(layer, share * layer.volume_ml));
  }
  const double back_per_ml = share / (1 - share); // of what each layer kept
  for (std::size_t i = 0; i + 1 < column.layers.size(); ++i) {
    matter::Mixture& layer = column.layers[i];
    matter::merge(layer, matter::draw(pool, back_per_ml * layer.volume_ml));
  }
  matter::merge(column.layers.back(), pool);
}

} // namespace

void mix(Column& column, const matter::Catalogue& catalogue, const std::vector<Extent>& heights,
         const std::vector<double>& shear_per_s, bool inverting, double seconds) {
  auto& layers = column.layers;
  const double strain = std::max(0.0, shear_per_s.front() - lifting_shear_per_s) * seconds;
  const double lifting = lifting_per_strain * strain + (inverting ? inversion_rate_per_s * seconds : 0.0);
  lift_sediment(column, 1 - std::exp(-lifting));
  if (inverting) {
    turn_over(column, catalogue, 1 - std::exp(-inversion_rate_per_s * seconds));
  }
  std::vector<double> density(layers.size());
  for (std::size_t i = 0; i < layers.size(); ++i) {
    density[i] = matter::density_kg_m3(layers[i], catalogue); // with what hangs in it
  }
  std::vector<Crossing> crossings(layers.size());
  for (std::size_t i = 0; i + 1 < layers.size(); ++i) {
    const double lower_m = heights[i].thickness_mm() / 1000;
    const double upper_m = heights[i + 1].thickness_mm() / 1000;
    const double shear = std::min(shear_per_s[i], shear_per_s[i + 1]);
    crossings[i] = {exchanged_share(column.shape, density[i] - density[i + 1], 0.5 * (lower_m + upper_m),
                                    shear, 0.5 * seconds),
                    diffused_share(lower_m, upper_m, layers[i].temperature_c, 0.5 * seconds)};
  }
  // Once up and once down, so that neither direction is favoured.
  for (std::size_t i = 0; i + 1 < layers.size(); ++i) {
    exchange(layers, i, crossings[i]);
  }
  for (std::size_t i = layers.size() - 1; i-- > 0;) {
    exchange(layers, i, crossings[i]);
  }
}

} // namespace matula::column
