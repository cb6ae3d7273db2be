#include "sim/appearance/eye.hpp"
#include "sim/appearance/optics_tables.hpp"
#include "sim/optics/fractal_cluster.hpp"
#include "sim/optics/mie.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <complex>
#include <numbers>
#include <optional>

namespace matula::appearance {

namespace {

using matter::ParticleKind;
using matter::size_bins;

constexpr double m_per_nm = 1e-9;
constexpr double m_per_mm = 1e-3;
constexpr double mm_per_m = 1e3;
constexpr double m3_per_ml = 1e-6;
constexpr double compact_dimension = 2.95; ///< From here on a "cluster" is a solid grain.

constexpr double least_extinction = 1e-9; ///< Absorbs nothing over any tube; keeps logarithms finite.

/// One particle in one band.
struct Single {
  double scatter_m2 = 0;
  double absorb_m2 = 0;
  double asymmetry = 0;
  double repeated_m2 =
      0; ///< Scattering summed over all its cores: light inside a piece is turned again and again.
};

bool compact(const ParticleKind& kind) {
  return kind.fractal_dimension >= compact_dimension;
}

/// One wavelength: singles of every class.
using Singles = std::array<Single, size_bins>;

/// Index of a grain against the liquid. An absorption edge is steep and nearly exponential, so the mean of
/// the logarithms of k moves it from where the fine grains have it to where the bulk does.
std::complex<double> index_at(const ParticleKind& kind, std::size_t band, double radius_m) {
  const double bulk = kind.bulk_share(radius_m);
  double n = kind.refractive_index[band];
  double k = kind.extinction_index[band];
  if (bulk < 1) {
    n = bulk * n + (1 - bulk) * kind.fine_refractive_index[band];
    k = std::exp(bulk * std::log(std::max(k, least_extinction)) +
                 (1 - bulk) * std::log(std::max(kind.fine_extinction_index[band], least_extinction)));
  }
  return {n / liquid_index, k / liquid_index};
}

Singles grains(const ParticleKind& kind, std::size_t band, double wavelength_m) {
  std::optional<optics::Spheres> spheres;
  double last_share = -1;
  Singles all;
  for (std::size_t bin = 0; bin < size_bins; ++bin) {
    const double radius_m = kind.bin_radius_m(bin);
    const double share = kind.bulk_share(radius_m);
    if (share != last_share) {
      spheres.emplace(wavelength_m, index_at(kind, band, radius_m));
      last_share = share;
    }
    const optics::SphereScatter s = spheres->around(radius_m, std::max(kind.size_spread, 1.0));
    const double volume = 4.0 / 3.0 * std::numbers::pi * radius_m * radius_m * radius_m;
    all[bin] = {s.scatter_per_m * volume, s.absorb_per_m * volume, s.asymmetry};
  }
  return all;
}

/// Clusters up to the core radius are fractal; larger ones are made of cores that scatter side by side, until
/// the whole takes twice its own area out of the beam.
Singles clusters(const ParticleKind& kind, std::size_t core_bin, double wavelength_m,
                 std::complex<double> m) {
  Singles all;
  for (std::size_t bin = 0; bin <= core_bin; ++bin) {
    const optics::ClusterScatter c =
        optics::cluster_scatter({kind.primary_radius_m, std::ldexp(1.0, static_cast<int>(bin)),
                                 kind.bin_radius_m(bin), kind.fractal_dimension},
                                wavelength_m, m);
    all[bin] = {c.scatter_m2, c.absorb_m2, c.asymmetry};
  }
  const Single& core = all[core_bin];
  for (std::size_t bin = core_bin + 1; bin < size_bins; ++bin) {
    const double cores = std::ldexp(1.0, static_cast<int>(bin - core_bin));
    const double area = std::numbers::pi * kind.bin_radius_m(bin) * kind.bin_radius_m(bin);
    const double wanted = cores * core.scatter_m2;
    all[bin] = {wanted / std::hypot(1.0, wanted / (2 * area)),
                area * -std::expm1(-cores * core.absorb_m2 / area), core.asymmetry, wanted};
  }
  return all;
}

/// Share of Henyey-Greenstein scattering that is turned by more than an angle.
double turned_aside(double g, double angle_deg) {
  const double cosine = std::cos(angle_deg * std::numbers::pi / 180);
  if (std::fabs(g) < 1e-6) {
    return (1 + cosine) / 2;
  }
  return (1 - g) / (2 * g) * ((1 + g) / std::sqrt(1 + g * g - 2 * g * cosine) - 1);
}

std::size_t core_bin_of(const ParticleKind& kind) {
  std::size_t bin = 0;
  while (bin + 1 < size_bins && kind.bin_radius_m(bin + 1) <= kind.core_radius_m) {
    ++bin;
  }
  return bin;
}

double opacity_of(const Single& one, double radius_m, double angle_deg) {
  const double area = std::numbers::pi * radius_m * radius_m;
  return -std::expm1(
      -(one.absorb_m2 + std::max(one.scatter_m2, one.repeated_m2) * turned_aside(one.asymmetry, angle_deg)) /
      area);
}

ScatterTable tabulate(const ParticleKind& kind) {
  ScatterTable t;
  const std::size_t core_bin = core_bin_of(kind);
  t.network_bin = compact(kind) ? 0 : core_bin;
  t.scatter_per_mm.resize(size_bins);
  t.absorb_per_mm.resize(size_bins);
  t.asymmetry.resize(size_bins);
  for (std::size_t i = 0; i < optics::band_count; ++i) {
    const double wavelength_m = optics::wavelength_nm(i) * m_per_nm / liquid_index;
    const Singles all =
        compact(kind) ? grains(kind, i, wavelength_m)
                      : clusters(kind, core_bin, wavelength_m, index_at(kind, i, kind.primary_radius_m));
    for (std::size_t bin = 0; bin < size_bins; ++bin) {
      // Grams in one mL, seen over one mm: particles per m3 times their cross-section times a millimetre.
      const double per_gram = m_per_mm / (kind.bin_mass_g(bin) * m3_per_ml);
      t.scatter_per_mm[bin][i] = all[bin].scatter_m2 * per_gram;
      t.absorb_per_mm[bin][i] = all[bin].absorb_m2 * per_gram;
      t.asymmetry[bin][i] = all[bin].asymmetry;
      if (i == luminous_band) {
        t.piece_opacity.push_back(opacity_of(all[bin], kind.bin_radius_m(bin), hiding_angle_deg));
        t.piece_straying.push_back(opacity_of(all[bin], kind.bin_radius_m(bin), straying_angle_deg));
        t.diameter_mm.push_back(2 * kind.bin_radius_m(bin) * mm_per_m);
      }
    }
  }
  return t;
}

} // namespace

std::vector<ScatterTable> make_scatter_tables(const matter::Catalogue& catalogue) {
  std::vector<ScatterTable> tables;
  tables.reserve(catalogue.particles.size());
  for (const ParticleKind& kind : catalogue.particles) {
    tables.push_back(tabulate(kind));
  }
  return tables;
}

} // namespace matula::appearance
