#include "sim/reaction/solids.hpp"

#include "sim/optics/nature.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace matula::reaction {

namespace {

constexpr double proton_g_per_mol = 1.008;
constexpr double m3_per_ml = 1e-6;

using Classes = std::array<double, matter::size_bins>;

/// Radius over mass of a particle of each class, relative to the smallest.
Classes uptake_per_gram() {
  Classes uptake{};
  for (std::size_t i = 0; i < matter::size_bins; ++i) {
    uptake[i] = std::exp2(-2.0 / 3.0 * static_cast<double>(i));
  }
  return uptake;
}

/// Grows particles without changing their number, by at most half of what is there; returns what was taken
/// up. The uptake of one particle goes with its radius, as diffusion feeds it. What the largest class takes
/// stays in it.
double grow_once(matter::Population& population, const Classes& uptake, double grams) {
  constexpr double largest_share = 0.5;
  const double now = std::min(grams, largest_share * population.suspended_g());
  double all = 0;
  for (std::size_t bin = 0; bin < matter::size_bins; ++bin) {
    all += uptake[bin] * population.grams[bin];
  }
  double sum = 0;
  double risen = 0; // Comes up from the class below, twice what it weighed.
  for (std::size_t bin = 0; bin < matter::size_bins; ++bin) {
    const double here = population.grams[bin];
    const double taken = here > 0 ? here * -std::expm1(-now * uptake[bin] / all) : 0.0;
    const bool last = bin + 1 == matter::size_bins;
    population.grams[bin] = std::max(0.0, population.grams[bin] + risen + (last ? taken : -taken));
    risen = 2 * taken;
    sum += taken;
  }
  return sum;
}

} // namespace

double solid_molar_mass_g(const Precipitation& row, const matter::Catalogue& catalogue) {
  double grams = row.water * nature::water_g_per_mol - row.protons * proton_g_per_mol;
  for (const auto& [id, count] : row.formula) {
    grams += count * catalogue.species[id].molar_mass_g_per_mol;
  }
  return grams;
}

double number_per_m3(const matter::Population& population, const matter::ParticleKind& kind,
                     double volume_ml) {
  const double smallest_g = kind.bin_mass_g(0);
  double number = 0;
  for (std::size_t bin = 0; bin < matter::size_bins; ++bin) {
    number += std::ldexp(population.grams[bin] / smallest_g, -static_cast<int>(bin));
  }
  return number / (volume_ml * m3_per_ml);
}

void deposit(matter::Population& population, const matter::ParticleKind& kind, double grams, std::size_t bin,
             double wanted_per_m3, double volume_ml) {
  if (grams <= 0) {
    return;
  }
  bin = std::min(bin, matter::size_bins - 1);
  double fresh_g = grams;
  if (std::isfinite(wanted_per_m3)) {
    const double missing = wanted_per_m3 - number_per_m3(population, kind, volume_ml);
    fresh_g = std::clamp(missing * volume_ml * m3_per_ml * kind.bin_mass_g(bin), 0.0, grams);
  }
  population.grams[bin] += fresh_g;
  double rest_g = grams - fresh_g;
  if (rest_g <= 0) {
    return;
  }
  if (population.suspended_g() <= 0) {
    population.grams[bin] += rest_g;
    return;
  }
  static const Classes uptake = uptake_per_gram();
  // Each pass leaves about the square of what it was given, as a share; of the last trifle the classes get as
  // much as they hold.
  constexpr int most_passes = 200;
  constexpr double trifle = 1e-9;
  const double trifle_g = trifle * std::min(grams, population.suspended_g());
  for (int pass = 0; pass < most_passes && rest_g > trifle_g; ++pass) {
    rest_g -= grow_once(population, uptake, rest_g);
  }
  const double risen = 1 + rest_g / population.suspended_g();
  for (double& g : population.grams) {
    g *= risen;
  }
}

void dissolve(matter::Population& population, double grams) {
  const double all = population.total_g();
  if (all <= 0 || grams <= 0) {
    return;
  }
  const double kept = std::max(0.0, 1 - grams / all);
  for (double& g : population.grams) {
    g *= kept;
  }
  population.clot_g *= kept;
}

} // namespace matula::reaction
