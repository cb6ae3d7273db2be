#include "sim/column/border.hpp"

#include "sim/column/layers.hpp"
#include "sim/matter/ph.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

namespace matula::column {

namespace {

constexpr double pi = 3.14159265358979323846;
constexpr double ml_per_mm3 = 1e-3;
constexpr double mm_per_m = 1000;
constexpr double still_shear_per_s = 0.5; // convection of a tube at rest does not renew the border
constexpr double renewal_per_shear =
    0.01; // surface renewal (Danckwerts 1951) for each 1/s of shear; fitted here
constexpr double shaken_per_s =
    0.17; // of the heavy volume, at the shear below; fitted here to a minute or two
constexpr double shaken_shear_per_s = 150;
constexpr double droplet_power = 1.2; // area of droplets with shear: size falls as We^-0.6 (Hinze 1955)
constexpr double nothing_mmol = 1e-15;

/// How fast liquid on either side is brought to the border, mL/s.
double conductance_ml_per_s(const Column& column, const matter::HeavyLiquid& liquid, double apart_mm,
                            double shear_per_s, bool inverting) {
  const double radius_mm = column.shape.inner_diameter_mm / 2;
  const double diffusing_mm_s = liquid.diffusivity_m2_s * mm_per_m * mm_per_m / apart_mm;
  const double renewal_per_s = renewal_per_shear * std::max(0.0, shear_per_s - still_shear_per_s);
  const double renewed_mm_s = mm_per_m * std::sqrt(liquid.diffusivity_m2_s * renewal_per_s);
  const double border = pi * radius_mm * radius_mm * (diffusing_mm_s + renewed_mm_s) * ml_per_mm3;
  if (!inverting) {
    return border;
  }
  const double share = std::pow(shear_per_s / shaken_shear_per_s, droplet_power);
  return border + shaken_per_s * share * column.heavy.volume_ml;
}

/// Amount in the heavy liquid after `seconds`, mmol: two films in series, each side well mixed. Exact.
double crossed(double water_mmol, double heavy_mmol, double water_ml, double heavy_ml, double ratio,
               double conductance, double seconds) {
  const double all = water_mmol + heavy_mmol;
  const double rest = all * ratio * heavy_ml / (water_ml + ratio * heavy_ml);
  const double rate_per_s = conductance / (1 + ratio) * (ratio / water_ml + 1 / heavy_ml);
  return std::clamp(rest + (heavy_mmol - rest) * std::exp(-rate_per_s * seconds), 0.0, all);
}

/// The water that takes part: the layer on the border, or all of it while it is turned over.
struct Water {
  std::size_t layers = 1;
  double volume_ml = 0;

  Water(const Column& column, bool inverting) : layers(inverting ? column.layers.size() : 1) {
    for (std::size_t i = 0; i < layers; ++i) {
      volume_ml += column.layers[i].volume_ml;
    }
  }
};

double amount(const Column& column, const Water& water, matter::SpeciesId id) {
  double sum = 0;
  for (std::size_t i = 0; i < water.layers; ++i) {
    sum += column.layers[i].mmol[id];
  }
  return sum;
}

/// What leaves comes out of each layer by what it holds; what enters is spread by volume.
void change_water(Column& column, const Water& water, matter::SpeciesId id, double before, double after) {
  for (std::size_t i = 0; i < water.layers; ++i) {
    double& mmol = column.layers[i].mmol[id];
    mmol = before > 0 && after <= before
               ? mmol * (after / before)
               : mmol + (after - before) * column.layers[i].volume_ml / water.volume_ml;
  }
}

} // namespace

double uncharged_share(const matter::Species& species, double ph, double log_gamma) {
  if (species.pka.empty()) {
    return species.protonated_charge == 0 ? 1 : 0;
  }
  const auto lost = static_cast<std::size_t>(std::lround(std::max(0.0, species.protonated_charge)));
  return lost <= species.pka.size() ? matter::form_fraction(species, lost, ph, log_gamma) : 0;
}

void cross_border(Column& column, const matter::Catalogue& catalogue, double shear_per_s, bool inverting,
                  double seconds) {
  if (column.heavy.volume_ml <= 0 || column.layers.empty()) {
    return;
  }
  const Water water(column, inverting);
  if (water.volume_ml <= 0) {
    return;
  }
  const double heavy_mm = column.shape.level_mm(column.heavy.volume_ml);
  const double apart_mm = 0.5 * (heavy_mm + extents(column).front().thickness_mm());
  const double conductance = conductance_ml_per_s(column, catalogue.heavy, apart_mm, shear_per_s, inverting);
  std::optional<matter::Acidity> acidity; // worked out only when something crosses
  for (matter::SpeciesId id = 0; id < catalogue.species.size(); ++id) {
    const matter::Species& species = catalogue.species[id];
    const double before = species.partition > 0 ? amount(column, water, id) : 0;
    if (species.partition <= 0 || before + column.heavy.mmol[id] < nothing_mmol) {
      continue;
    }
    if (!species.pka.empty() && !acidity) {
      acidity = matter::acidity(column.layers.front(), catalogue);
    }
    const double uncharged = acidity ? uncharged_share(species, acidity->ph, acidity->log_gamma) : 1;
    const double all = before + column.heavy.mmol[id];
    const double heavy = crossed(before, column.heavy.mmol[id], water.volume_ml, column.heavy.volume_ml,
                                 species.partition * uncharged, conductance, seconds);
    change_water(column, water, id, before, all - heavy);
    column.heavy.mmol[id] = heavy;
  }
}

} // namespace matula::column
