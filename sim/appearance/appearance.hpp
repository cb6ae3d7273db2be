#pragma once

#include "sim/column/vessel.hpp"
#include "sim/optics/colour.hpp"

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace matula::appearance {

/// What is held behind the vessel.
enum class Card { White, Black, Printed };

/// How a person looks at a vessel.
struct View {
  Card card = Card::White;
  optics::Lamp lamp = optics::Lamp::Daylight;
};

/// Samples across half the inside diameter, from the axis to the wall (offset = (i + 0.5) / lateral_samples
/// of the radius).
inline constexpr std::size_t lateral_samples = 8;

/// One height of the column as it reaches the eye. Colours are D65 XYZ with Y = 1 for the white card.
struct Row {
  double height_mm = 0; ///< Middle of the row above the inside bottom.
  double thickness_mm = 0;
  std::array<optics::Xyz, lateral_samples> on_white{}; ///< Seen against the white card.
  std::array<optics::Xyz, lateral_samples> on_black{}; ///< Seen against the black card, lit from the room.
  double print_contrast = 1; ///< Fraction of a printed line's contrast that survives the path on the axis.
  double print_sharp = 1;    ///< Fraction that arrives unscattered: the edges of letters, however faint.
  double print_halo = 0;     ///< Fraction that arrives turned a little: it shows the print spread out.
  double print_blur_mm = 0;  ///< Half width of that spread on the card.
  double granularity = 0;    ///< RMS contrast the visible pieces make in one 0.1 mm element of the eye.
  double opacity = 0;        ///< 1 - collimated transmission of luminance along the axis.
};

enum class PieceKind { Granule, Floc, Clot, Crystal, Bubble };

/// One thing the eye can make out. Positions are fractions of the inside radius (x across, z towards the eye)
/// and mm up.
struct Piece {
  PieceKind kind = PieceKind::Granule;
  double x = 0;
  double z = 0;
  double height_mm = 0;
  double size_mm = 0; ///< Across.
  double opacity = 0; ///< Share of the light behind it that it stops.
  std::uint32_t shape_seed = 0;
  optics::Xyz colour{}; ///< Of the piece by reflected light.
};

/// Solids on the bottom.
struct Sediment {
  double height_mm = 0;
  optics::Xyz colour{};
  double roughness_mm = 0; ///< Size of the lumps at its surface.
};

/// Powder strewn on the surface.
struct Powder {
  double floating_share = 0; ///< Of the grains strewn, still on the surface.
  double cover = 0;          ///< Share of the surface they hide, 0..1.
  double grain_mm = 0;       ///< Across.
  optics::Xyz colour{};
};

/// What the eye can make of one vessel; no concentration, no grade and no name of a substance is in it.
struct Appearance {
  double inner_diameter_mm = 14;
  double wall_mm = 1;
  double vessel_height_mm = 150;
  bool round_bottom = true;
  double level_mm = 0;                  ///< Surface above the inside bottom; 0 for an empty vessel.
  std::vector<column::GlassMark> marks; ///< Lines on the glass.
  double meniscus_rise_mm = 0;          ///< How far the liquid climbs the wall above the level.
  View view;
  std::uint32_t grain_seed = 0; ///< Fixes how a bed and a curd lie; the same vessel keeps it.
  std::vector<Row> rows;        ///< Bottom to top, covering 0..level_mm.
  std::vector<Piece> pieces;    ///< Far to near.
  Sediment sediment;
  double clot_fraction = 0; ///< Share of the column's height held by one continuous clot.
  double clot_from_mm = 0;  ///< Extent of the clot.
  double clot_to_mm = 0;
  optics::Xyz clot_colour{};
  double heavy_to_mm = 0;       ///< Upper border of a heavy liquid that does not mix with water; 0 without.
  double boiling = 0;           ///< 0..1
  double boils_from_mm = 0;     ///< Lowest height at which steam forms; 0 when nothing boils.
  double steam = 0;             ///< 0..1
  double foam_mm = 0;           ///< Height of foam on the surface.
  std::optional<Powder> powder; ///< Nothing where none was strewn.
  double settled_share = 0;     ///< Share of the visible solid that lies on the bottom.
  std::vector<std::string> odours; ///< Words for a nose held near; filled only when smelled.
};

} // namespace matula::appearance
