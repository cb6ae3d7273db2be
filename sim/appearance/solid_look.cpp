#include "sim/appearance/solid_look.hpp"

#include "sim/appearance/dissolved.hpp"
#include "sim/optics/band_shape.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace matula::appearance {

namespace {

using matter::size_bins;

constexpr double mm3_per_ml = 1000;
constexpr double least_opacity = 1e-3; // Fainter pieces are not seen anyway.

struct Turbid {
  optics::Spectrum absorb{};  ///< per mm
  optics::Spectrum reduced{}; ///< per mm
};

/// Class whose single scattering stands for what happens inside a piece: past the network class each gram
/// scatters as it does there, and how often light is turned is left to the table of turbid light.
std::size_t unit_of(const ScatterTable& t, std::size_t bin) {
  return t.network_bin > 0 ? std::min(bin, t.network_bin) : bin;
}

void add_solid(Turbid& to, const ScatterTable& t, std::size_t bin, double g_per_ml) {
  const std::size_t unit = unit_of(t, bin);
  for (std::size_t i = 0; i < optics::band_count; ++i) {
    to.absorb[i] += g_per_ml * t.absorb_per_mm[unit][i];
    to.reduced[i] += g_per_ml * t.scatter_per_mm[unit][i] * (1 - t.asymmetry[unit][i]);
  }
}

void add_liquid(Turbid& to, const matter::Mixture& mixture, const matter::Catalogue& catalogue) {
  to.absorb = optics::sum(to.absorb, dissolved_absorption(mixture, catalogue));
}

/// Mean over the middle half of the face.
TwoCards face_colour(const Turbid& turbid, double depth_mm, const Seeing& seeing) {
  constexpr std::size_t middle = lateral_samples / 2;
  optics::Spectrum white{};
  optics::Spectrum black{};
  for (std::size_t i = 0; i < optics::band_count; ++i) {
    const auto light = seeing.lookup.at(turbid.reduced[i] * depth_mm, turbid.absorb[i] * depth_mm);
    for (std::size_t k = 0; k < middle; ++k) {
      white[i] += light.on_white[k] / middle;
      black[i] += light.on_black[k] / middle;
    }
  }
  return {seen(white, seeing), seen(black, seeing)};
}

} // namespace

optics::Xyz seen(const optics::Spectrum& light, const Seeing& seeing) {
  const auto& colorimetry = seeing.tables.colorimetry;
  return optics::adapt_to_display(optics::to_xyz(light, colorimetry, seeing.view.lamp),
                                  optics::white_point(colorimetry, seeing.view.lamp));
}

TwoCards packed_colour(const matter::Mixture& mixture, double depth_mm, const Seeing& seeing) {
  Turbid turbid;
  add_liquid(turbid, mixture, seeing.catalogue);
  for (const auto& [id, population] : mixture.populations.present()) {
    const ScatterTable& t = seeing.tables.scatter[id];
    for (std::size_t bin = 0; bin < size_bins; ++bin) {
      if (population.grams[bin] > 0) {
        add_solid(turbid, t, bin, population.grams[bin] / mixture.volume_ml);
      }
    }
    if (population.clot_g > 0) {
      add_solid(turbid, t, t.network_bin, population.clot_g / mixture.volume_ml);
    }
  }
  return face_colour(turbid, depth_mm, seeing);
}

TwoCards piece_colour(matter::ParticleId kind, std::size_t bin, const matter::Mixture& around,
                      double width_mm, const Seeing& seeing) {
  const matter::ParticleKind& solid = seeing.catalogue.particles[kind];
  const ScatterTable& t = seeing.tables.scatter[kind];
  const double radius_mm = t.diameter_mm[bin] / 2;
  const double area_mm2 = std::numbers::pi * radius_mm * radius_mm;
  const double per_area = solid.bin_mass_g(bin) * mm3_per_ml / area_mm2;
  const std::size_t unit = unit_of(t, bin);
  Turbid before;
  add_liquid(before, around, seeing.catalogue);
  const double hidden = std::max(t.piece_opacity[bin], least_opacity);
  optics::Spectrum white{};
  optics::Spectrum black{};
  for (std::size_t i = 0; i < optics::band_count; ++i) {
    const double liquid = before.absorb[i] * width_mm / 2;
    const double turned = t.scatter_per_mm[unit][i] * (1 - t.asymmetry[unit][i]) * per_area;
    const auto bare = seeing.lookup.at(0, liquid);
    const auto lit = seeing.lookup.at(turned, liquid + t.absorb_per_mm[bin][i] * per_area);
    // What the piece adds of its own, so that (1 - hidden) background + hidden colour is what is seen.
    white[i] = std::max(0.0, (lit.on_white[0] - (1 - hidden) * bare.on_white[0]) / hidden);
    black[i] = std::max(0.0, (lit.on_black[0] - (1 - hidden) * bare.on_black[0]) / hidden);
  }
  return {seen(white, seeing), seen(black, seeing)};
}

} // namespace matula::appearance
