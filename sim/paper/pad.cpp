#include "sim/paper/pad.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace matula::paper {

namespace {

constexpr double l_per_ml = 1e-3;
constexpr double small_molecule_mm2_per_s = 6e-4; // 6e-10 m2/s for 100 g/mol in water at 22 C, from memory.
constexpr double small_molecule_g_per_mol = 100;
constexpr double pores_slow = 0.5; // Winding pores halve diffusion: common value for paper, from memory.

/// The detergent of the pad breaks cells where they lie.
void lyse(Pad& pad, const PadKind& kind, const matter::Catalogue& catalogue, double seconds) {
  constexpr double mmol_per_mol = 1000;
  for (const Lysis& lysis : kind.lyses) {
    if (pad.inside.populations[lysis.cells].empty()) {
      continue;
    }
    matter::Population& cells = pad.inside.populations.of(lysis.cells);
    const double share = -std::expm1(-lysis.per_s * seconds);
    const bool speckles =
        kind.speckle && std::any_of(lysis.releases.begin(), lysis.releases.end(),
                                    [&](const auto& each) { return each.first == kind.speckle->from; });
    double broken_g = 0;
    for (std::size_t bin = 0; bin < matter::size_bins; ++bin) {
      const double grams = share * cells.grams[bin];
      cells.grams[bin] -= grams;
      broken_g += grams;
      pad.broken_cells += speckles ? grams / catalogue.particles[lysis.cells].bin_mass_g(bin) : 0;
    }
    for (const auto& [id, per_g] : lysis.releases) {
      const double mmol = broken_g * per_g / catalogue.species[id].molar_mass_g_per_mol * mmol_per_mol;
      pad.inside.mmol[id] += mmol;
      pad.local_mmol += speckles && id == kind.speckle->from ? mmol : 0;
    }
  }
}

} // namespace

Pad dry_pad(const PadKind& kind, const matter::Catalogue& catalogue, double room_c) {
  Pad pad{matter::empty_mixture(catalogue), 0, 0};
  pad.inside.temperature_c = room_c;
  for (const auto& [id, mmol_per_l] : kind.bath_mmol_per_l) {
    pad.inside.mmol[id] += mmol_per_l * l_per_ml * kind.void_ml();
  }
  return pad;
}

double leached_share(double molar_mass_g_per_mol, double thickness_mm, double seconds) {
  // Stokes and Einstein: diffusion goes with the inverse radius, the cube root of the mass.
  const double diffusion = small_molecule_mm2_per_s * pores_slow *
                           std::cbrt(small_molecule_g_per_mol / std::max(molar_mass_g_per_mol, 1.0));
  const double rate_per_s =
      std::numbers::pi * std::numbers::pi / 4 * diffusion / (thickness_mm * thickness_mm);
  return -std::expm1(-rate_per_s * std::max(seconds, 0.0));
}

void soak(Pad& pad, const matter::Mixture& liquid) {
  matter::merge(pad.inside, liquid);
}

void drip(Pad& pad, const PadKind& kind, const matter::Mixture& reagent) {
  matter::merge(pad.inside, reagent);
  const double over_ml = pad.inside.volume_ml - kind.void_ml();
  if (over_ml <= 0) {
    return;
  }
  const matter::Populations held = pad.inside.populations;
  (void)matter::draw(pad.inside, over_ml);
  pad.inside.populations = held;
}

Pad pressed_pad(const matter::Mixture& residue, const PadKind& kind) {
  constexpr double left_share =
      0.5; // Of the pores, after pressing between dry sheets: common practice, fitted here.
  Pad pad{residue, 0, 0};
  const double over_ml = pad.inside.volume_ml - left_share * kind.void_ml();
  if (over_ml > 0) {
    (void)matter::draw(pad.inside, over_ml);
    pad.inside.populations = residue.populations;
  }
  return pad;
}

std::vector<double> leach(Pad& pad, const PadKind& kind, const matter::Catalogue& catalogue, double seconds) {
  std::vector<double> lost(pad.inside.mmol.size(), 0.0);
  for (const auto& [id, bath] : kind.bath_mmol_per_l) {
    lost[id] = pad.inside.mmol[id] *
               leached_share(catalogue.species[id].molar_mass_g_per_mol, kind.stock.thickness_mm, seconds);
    pad.inside.mmol[id] -= lost[id];
  }
  return lost;
}

void live(Pad& pad, const PadKind& kind, const column::Chemistry& chemistry, double room_c, double seconds) {
  if (pad.inside.empty() || !(seconds > 0)) {
    return;
  }
  // Half the warming on either side of the reactions.
  const double keep = std::exp(-0.5 * seconds / kind.stock.warming_s);
  pad.inside.temperature_c = room_c + (pad.inside.temperature_c - room_c) * keep;
  lyse(pad, kind, *chemistry.catalogue, seconds);
  reaction::react(pad.inside, chemistry, *chemistry.catalogue, seconds, 0);
  pad.inside.temperature_c = room_c + (pad.inside.temperature_c - room_c) * keep;
}

} // namespace matula::paper
