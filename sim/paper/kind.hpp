#pragma once

#include "sim/matter/mixture.hpp"
#include "sim/specimen/specimen.hpp"

#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace matula::paper {

/// What paper is as a thing that soaks and scatters.
struct Stock {
  double thickness_mm = 0.35;
  double void_share = 0.7;          ///< Of the volume, filled by liquid when soaked.
  double scatter_per_mm = 20;       ///< Kubelka-Munk S of the dry sheet.
  double wet_scatter_share = 0.3;   ///< Of it, left when the pores hold liquid.
  optics::Spectrum absorb_per_mm{}; ///< Kubelka-Munk K of the fibres.
  double film_share = 0.5;          ///< Of a wet surface, lying under a smooth film.
  double backing = 0.85;            ///< Reflectance of what the sheet lies on.
  double warming_s = 45;            ///< Time in which a soaked pad nears the room's temperature to 1/e.
};

/// One colour of the reference card: what it is called and the specimen it stands for.
struct Level {
  std::string word;            ///< "trace", "6.5"
  double value = 0;            ///< In the pad's unit.
  specimen::Specimen specimen; ///< Dipped into to make the card.
};

/// Cells that a pad's detergent breaks.
struct Lysis {
  matter::ParticleId cells = 0;
  double per_s = 0; ///< First order.
  std::vector<std::pair<matter::SpeciesId, double>>
      releases; ///< Grams set free by a gram of cells; the rest is water.
};

/// Dye that shows as spots where cells broke, for what they set free works where they lay.
struct Speckle {
  matter::SpeciesId from = 0; ///< What broken cells set free, that makes the dye.
  matter::SpeciesId dye = 0;
  double spot_mm2 = 0.02; ///< Area one cell colours.
};

/// One field of a paper.
struct PadKind {
  std::string key;   ///< "glucose"
  std::string label; ///< "Glucose"
  std::string unit;  ///< "mg/dL"
  Stock stock;
  double area_mm2 = 25;
  std::vector<std::pair<matter::SpeciesId, double>> bath_mmol_per_l; ///< What it was soaked in before drying.
  std::vector<Lysis> lyses;                                          ///< Empty without a detergent.
  std::optional<Speckle> speckle; ///< Of a pad that colours round its cells.
  double read_at_s = 60;          ///< After dipping.
  double read_within_s = 5;       ///< To either side.
  double void_after_s = 150;      ///< Colours mean nothing any more.
  std::vector<Level> levels;      ///< Rising.

  /// Liquid the pad takes up, mL.
  [[nodiscard]] double void_ml() const { return area_mm2 * stock.thickness_mm * stock.void_share * 1e-3; }
};

/// A kind of paper: one pad for an indicator paper, several for a strip.
struct PaperKind {
  std::string key;   ///< "strip"
  std::string label; ///< "Reagent strip"
  double fill_s = 1; ///< A dip so long soaks the pads; longer ones leach them.
  double run_over_per_s =
      0; ///< Share of a pad's liquid that its neighbour takes each second while it is not blotted.
  std::vector<PadKind> pads; ///< In their order on the paper.
  std::string source;
};

} // namespace matula::paper
