#include "sim/paper/pad_look.hpp"

#include "sim/appearance/dissolved.hpp"
#include "sim/appearance/eye.hpp"
#include "sim/optics/kubelka_munk.hpp"

#include <algorithm>
#include <cmath>

namespace matula::paper {

namespace {

constexpr double mm3_per_ml = 1000;
constexpr double diffuse_path =
    2; // A diffuse ray's way through a layer over the layer's thickness: Kubelka 1948.
constexpr double isotropic = 0.75;  // S = 3/4 mu_s (1 - g): L.F. Gate, Appl. Opt. 13 (1974) 236, from memory.
constexpr double film_glare = 0.02; // Of water for light from above.
constexpr double film_glare_diffuse =
    0.066; // Of water for light from all sides: D.B. Judd 1942, from memory.

/// Scattering and absorbing power of the solids held in the pad.
struct Powers {
  optics::Spectrum scatter{};
  optics::Spectrum absorb{};
};

void add_class(Powers& to, const appearance::ScatterTable& t, std::size_t bin, double g_per_ml_mm) {
  for (std::size_t i = 0; i < optics::band_count; ++i) {
    to.scatter[i] += isotropic * g_per_ml_mm * t.scatter_per_mm[bin][i] * (1 - t.asymmetry[bin][i]);
    to.absorb[i] += diffuse_path * g_per_ml_mm * t.absorb_per_mm[bin][i];
  }
}

Powers solids(const matter::Mixture& inside, const std::vector<appearance::ScatterTable>& scatter,
              double depth_mm) {
  Powers all;
  for (const auto& [id, population] : inside.populations.present()) {
    if (id >= scatter.size() || population.empty()) {
      continue;
    }
    const appearance::ScatterTable& t = scatter[id];
    for (std::size_t bin = 0; bin < matter::size_bins; ++bin) {
      if (population.grams[bin] > 0) {
        // Clusters past the network class lie spread among the fibres: each gram scatters as it does there.
        const std::size_t unit = t.network_bin > 0 ? std::min(bin, t.network_bin) : bin;
        add_class(all, t, unit, population.grams[bin] / inside.volume_ml * depth_mm);
      }
    }
    add_class(all, t, t.network_bin, population.clot_g / inside.volume_ml * depth_mm);
  }
  return all;
}

/// As if everything were spread evenly over the pad.
optics::Spectrum even_reflectance(const Pad& pad, const PadKind& kind, const matter::Catalogue& catalogue,
                                  const std::vector<appearance::ScatterTable>& scatter) {
  const Stock& stock = kind.stock;
  const bool wet = !pad.inside.empty();
  matter::Mixture inside = pad.inside;
  inside.volume_ml = wet ? inside.volume_ml : kind.void_ml();
  const double depth_mm = inside.volume_ml * mm3_per_ml / kind.area_mm2;
  const optics::Spectrum dissolved = appearance::dissolved_absorption(inside, catalogue);
  const Powers held = solids(inside, scatter, depth_mm);
  const double fibres = stock.scatter_per_mm * stock.thickness_mm * (wet ? stock.wet_scatter_share : 1);
  const double inward = optics::inside_reflectance(appearance::liquid_index, film_glare_diffuse);
  optics::Spectrum r{};
  for (std::size_t i = 0; i < optics::band_count; ++i) {
    const double absorbing =
        stock.absorb_per_mm[i] * stock.thickness_mm + diffuse_path * dissolved[i] * depth_mm + held.absorb[i];
    const double body = optics::layer_reflectance(fibres + held.scatter[i], absorbing, stock.backing);
    const double film = wet ? stock.film_share : 0;
    r[i] = (1 - film) * body + film * optics::through_surface(body, film_glare, inward);
  }
  return r;
}

/// The same with the dye of the pad's spots `times` as strong.
optics::Spectrum with_dye(const Pad& pad, const PadKind& kind, const matter::Catalogue& catalogue,
                          const std::vector<appearance::ScatterTable>& scatter, double times) {
  Pad other = pad;
  other.inside.mmol[kind.speckle->dye] *= times;
  return even_reflectance(other, kind, catalogue, scatter);
}

} // namespace

Spots spots_on(const Pad& pad, const PadKind& kind, const matter::Catalogue& catalogue,
               const std::vector<appearance::ScatterTable>& scatter) {
  constexpr double even_cover = 0.95; // From here on the spots have run together.
  Spots spots;
  const double cover =
      kind.speckle ? -std::expm1(-pad.broken_cells * kind.speckle->spot_mm2 / kind.area_mm2) : 0;
  if (!(pad.broken_cells >= 1) || cover > even_cover) {
    return spots;
  }
  const double all = pad.inside.mmol[kind.speckle->from];
  const double local = all > 0 ? std::min(1.0, pad.local_mmol / all) : 0;
  spots.count = static_cast<int>(pad.broken_cells);
  spots.cover = cover;
  spots.ground = with_dye(pad, kind, catalogue, scatter, 1 - local);
  spots.spot = with_dye(pad, kind, catalogue, scatter, 1 - local + local / cover);
  return spots;
}

optics::Spectrum reflectance(const Pad& pad, const PadKind& kind, const matter::Catalogue& catalogue,
                             const std::vector<appearance::ScatterTable>& scatter) {
  const Spots spots = spots_on(pad, kind, catalogue, scatter);
  if (spots.count == 0) {
    return even_reflectance(pad, kind, catalogue, scatter);
  }
  optics::Spectrum mean{};
  for (std::size_t i = 0; i < optics::band_count; ++i) {
    mean[i] = spots.cover * spots.spot[i] + (1 - spots.cover) * spots.ground[i];
  }
  return mean;
}

optics::Xyz colour_of(const optics::Spectrum& reflectance, const optics::Colorimetry& colorimetry,
                      optics::Lamp lamp) {
  return optics::adapt_to_display(optics::to_xyz(reflectance, colorimetry, lamp),
                                  optics::white_point(colorimetry, lamp));
}

} // namespace matula::paper
