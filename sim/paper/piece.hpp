#pragma once

#include "sim/paper/pad.hpp"

#include <cstdint>

namespace matula::paper {

/// One piece of paper on the bench. Plain data.
struct Piece {
  std::string name; ///< "strip-1"
  std::string kind; ///< Key of its PaperKind.
  std::vector<Pad> pads;
  double wetted_s = -1; ///< Bench time; -1 while dry.
  bool blotted = false;
  std::int64_t lived_ticks = 0;
};

[[nodiscard]] Piece dry_piece(const PaperKind& kind, const matter::Catalogue& catalogue, double room_c);

/// Dips every pad into `vessel` for `seconds`: each fills from the upper liquid; what a long dip leaches
/// stays in the vessel. False when there is too little liquid; then nothing has happened.
bool dip(Piece& piece, const PaperKind& kind, column::Column& vessel, const matter::Catalogue& catalogue,
         double seconds);

/// Lets all pads live; liquid runs over between neighbours until the piece is blotted.
void live(Piece& piece, const PaperKind& kind, const column::Chemistry& chemistry, double room_c,
          double seconds);

} // namespace matula::paper
