#include "sim/matter/particle.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstring>

namespace matula::matter {

namespace {

constexpr double pi = 3.14159265358979323846;
constexpr double g_per_kg = 1000.0;

} // namespace

double ParticleKind::bin_mass_g(std::size_t bin) const {
  const double sphere_m3 = 4.0 / 3.0 * pi * primary_radius_m * primary_radius_m * primary_radius_m;
  return std::ldexp(sphere_m3 * solid_density_kg_m3 * g_per_kg, static_cast<int>(bin));
}

double ParticleKind::bin_radius_m(std::size_t bin) const {
  const double primaries = std::ldexp(1.0, static_cast<int>(bin));
  const double fractal_radius_m = primary_radius_m * std::pow(primaries, 1.0 / fractal_dimension);
  if (core_radius_m <= primary_radius_m || fractal_radius_m <= core_radius_m) {
    return fractal_radius_m;
  }
  const double primaries_in_core = std::pow(core_radius_m / primary_radius_m, fractal_dimension);
  return core_radius_m * std::cbrt(primaries / primaries_in_core);
}

double ParticleKind::bulk_share(double radius_m) const {
  if (fine_below_m <= 0 || radius_m >= coarse_above_m) {
    return 1;
  }
  const double way = std::log(radius_m / fine_below_m) / std::log(coarse_above_m / fine_below_m);
  const double x = std::clamp(way, 0.0, 1.0);
  return x * x * (3 - 2 * x);
}

bool Population::all_zero() const {
  static constexpr std::array<double, size_bins> none{};
  return std::memcmp(grams.data(), none.data(), sizeof none) == 0;
}

double Population::suspended_g() const {
  // Four sums side by side: the processor need not wait for one addition before the next.
  static_assert(size_bins % 4 == 0);
  std::array<double, 4> sum{};
  for (std::size_t i = 0; i < size_bins; i += 4) {
    sum[0] += grams[i];
    sum[1] += grams[i + 1];
    sum[2] += grams[i + 2];
    sum[3] += grams[i + 3];
  }
  return (sum[0] + sum[1]) + (sum[2] + sum[3]);
}

} // namespace matula::matter
