#pragma once

#include "sim/column/column.hpp"
#include "sim/paper/kind.hpp"

namespace matula::paper {

/// One field of a piece of paper: what is in it, dry or soaked. While it is dry its mixture has no volume and
/// holds what it was soaked in by the maker.
struct Pad {
  matter::Mixture inside;
  double broken_cells = 0; ///< Of the kinds that release what speckles.
  double local_mmol = 0;   ///< Of that, set free here.
};

/// A pad as it comes out of the bottle, at the room's temperature.
[[nodiscard]] Pad dry_pad(const PadKind& kind, const matter::Catalogue& catalogue, double room_c);

/// Share of a dissolved substance that leaves a sheet lying `seconds` in a large liquid: first term of
/// diffusion out of a plane sheet (J. Crank, The Mathematics of Diffusion, 1975, eq. 4.18), from one face.
[[nodiscard]] double leached_share(double molar_mass_g_per_mol, double thickness_mm, double seconds);

/// Soaks a dry pad with `liquid` (its own temperature and solids come along).
void soak(Pad& pad, const matter::Mixture& liquid);

/// Lets a reagent drip on a pad: it mixes with what is inside, and what the pad cannot hold runs off. Solids
/// stay among the fibres.
void drip(Pad& pad, const PadKind& kind, const matter::Mixture& reagent);

/// A filter paper laid out and pressed half dry: the solids of `residue` among its fibres, with as much of
/// its liquid as is left after pressing.
[[nodiscard]] Pad pressed_pad(const matter::Mixture& residue, const PadKind& kind);

/// Takes out what a dip of `seconds` beyond the filling washes out; the caller gives it to the vessel.
[[nodiscard]] std::vector<double> leach(Pad& pad, const PadKind& kind, const matter::Catalogue& catalogue,
                                        double seconds);

/// Lets a pad live for `seconds` by the laws of every other liquid. A dry pad keeps.
void live(Pad& pad, const PadKind& kind, const column::Chemistry& chemistry, double room_c, double seconds);

} // namespace matula::paper
