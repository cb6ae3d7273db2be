#include "sim/appearance/layer_optics.hpp"

#include "sim/appearance/dissolved.hpp"
#include "sim/appearance/eye.hpp"

#include <cmath>
#include <numbers>

namespace matula::appearance {

namespace {

using matter::size_bins;

constexpr double mm3_per_ml = 1000;

/// Loss over the depth of a layer of unit scattering: the mean of 1 - exp(-(1 - g) 2 pi f z), z from the
/// card. Small-angle theory (Wells 1969); exp(-(1 - g) k) is the Hankel transform of the Henyey-Greenstein
/// forward peak.
double loss_over(double depth_mm, double g) {
  const double k = (1 - g) * 2 * std::numbers::pi * print_cycles_per_mm;
  if (k * (depth_mm + card_gap_mm) < 1e-6) {
    return 0;
  }
  return depth_mm - (std::exp(-k * card_gap_mm) - std::exp(-k * (card_gap_mm + depth_mm))) / k;
}

void add(optics::Spectrum& to, const optics::Spectrum& what, double times) {
  for (std::size_t i = 0; i < optics::band_count; ++i) {
    to[i] += times * what[i];
  }
}

void add_haze(LayerOptics& o, const ScatterTable& t, std::size_t bin, double g_per_ml, double loss) {
  add(o.absorb, t.absorb_per_mm[bin], g_per_ml);
  add(o.scatter, t.scatter_per_mm[bin], g_per_ml);
  for (std::size_t i = 0; i < optics::band_count; ++i) {
    o.reduced_scatter[i] += g_per_ml * t.scatter_per_mm[bin][i] * (1 - t.asymmetry[bin][i]);
  }
  o.print_loss += g_per_ml * loss;
  o.forward_turn += g_per_ml * t.scatter_per_mm[bin][luminous_band] * (1 - t.asymmetry[bin][luminous_band]);
}

void add_pieces(LayerOptics& o, const matter::ParticleKind& kind, const ScatterTable& t, std::size_t bin,
                double g_per_ml) {
  const double per_mm3 = g_per_ml / (kind.bin_mass_g(bin) * mm3_per_ml);
  const double radius = t.diameter_mm[bin] / 2;
  const double area_per_mm = per_mm3 * std::numbers::pi * radius * radius;
  o.hidden += area_per_mm * t.piece_opacity[bin];
  o.strayed += area_per_mm * t.piece_straying[bin];
  o.graininess += area_per_mm * t.piece_opacity[bin] * t.piece_opacity[bin];
}

void add_population(LayerOptics& o, const matter::Population& population, const matter::ParticleKind& kind,
                    const ScatterTable& t, const std::array<double, size_bins>& loss, double volume_ml) {
  for (std::size_t bin = 0; bin < size_bins; ++bin) {
    if (population.grams[bin] <= 0) {
      continue;
    }
    const double g_per_ml = population.grams[bin] / volume_ml;
    if (t.diameter_mm[bin] < visible_size_mm) {
      add_haze(o, t, bin, g_per_ml, loss[bin]);
    } else {
      add_pieces(o, kind, t, bin, g_per_ml);
    }
  }
  if (population.clot_g > 0) {
    add_haze(o, t, t.network_bin, population.clot_g / volume_ml, loss[t.network_bin]);
  }
}

double mix(double one, double other, double share) {
  return one + share * (other - one);
}

optics::Spectrum mix(const optics::Spectrum& one, const optics::Spectrum& other, double share) {
  optics::Spectrum s{};
  for (std::size_t i = 0; i < optics::band_count; ++i) {
    s[i] = mix(one[i], other[i], share);
  }
  return s;
}

} // namespace

PrintLoss print_loss(const std::vector<ScatterTable>& tables, double inner_diameter_mm) {
  PrintLoss loss;
  for (const ScatterTable& t : tables) {
    auto& bins = loss.by_kind.emplace_back();
    for (std::size_t bin = 0; bin < size_bins; ++bin) {
      bins[bin] = t.scatter_per_mm[bin][luminous_band] *
                  loss_over(inner_diameter_mm, t.asymmetry[bin][luminous_band]);
    }
  }
  return loss;
}

LayerOptics layer_optics(const matter::Mixture& layer, const matter::Catalogue& catalogue,
                         const std::vector<ScatterTable>& tables, const PrintLoss& loss) {
  LayerOptics o;
  if (layer.empty()) {
    return o;
  }
  add(o.absorb, dissolved_absorption(layer, catalogue), 1);
  for (const auto& [id, population] : layer.populations.present()) {
    add_population(o, population, catalogue.particles[id], tables[id], loss.by_kind[id], layer.volume_ml);
  }
  return o;
}

LayerOptics between(const LayerOptics& one, const LayerOptics& other, double share) {
  return {mix(one.absorb, other.absorb, share),
          mix(one.scatter, other.scatter, share),
          mix(one.reduced_scatter, other.reduced_scatter, share),
          mix(one.print_loss, other.print_loss, share),
          mix(one.forward_turn, other.forward_turn, share),
          mix(one.hidden, other.hidden, share),
          mix(one.strayed, other.strayed, share),
          mix(one.graininess, other.graininess, share)};
}

} // namespace matula::appearance
