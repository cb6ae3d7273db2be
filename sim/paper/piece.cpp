#include "sim/paper/piece.hpp"

#include <algorithm>
#include <cmath>

namespace matula::paper {

namespace {

/// Gives back to the vessel's upper layer what has been washed out.
void give(column::Column& vessel, const std::vector<double>& mmol) {
  matter::Mixture& top = vessel.layers.empty() ? vessel.sediment : vessel.layers.back();
  for (std::size_t i = 0; i < mmol.size() && i < top.mmol.size(); ++i) {
    top.mmol[i] += mmol[i];
  }
}

void run_over(Piece& piece, double share) {
  for (std::size_t i = 0; i + 1 < piece.pads.size(); ++i) {
    matter::Mixture& one = piece.pads[i].inside;
    matter::Mixture& other = piece.pads[i + 1].inside;
    const double volume_ml = share * std::min(one.volume_ml, other.volume_ml);
    const matter::Mixture there = matter::draw(one, volume_ml);
    const matter::Mixture back = matter::draw(other, volume_ml);
    matter::merge(one, back);
    matter::merge(other, there);
  }
}

} // namespace

Piece dry_piece(const PaperKind& kind, const matter::Catalogue& catalogue, double room_c) {
  Piece piece;
  piece.kind = kind.key;
  for (const PadKind& pad : kind.pads) {
    piece.pads.push_back(dry_pad(pad, catalogue, room_c));
  }
  return piece;
}

bool dip(Piece& piece, const PaperKind& kind, column::Column& vessel, const matter::Catalogue& catalogue,
         double seconds) {
  double wanted_ml = 0;
  for (const PadKind& pad : kind.pads) {
    wanted_ml += pad.void_ml();
  }
  if (vessel.volume_ml() <= wanted_ml) {
    return false;
  }
  for (std::size_t i = 0; i < piece.pads.size(); ++i) {
    Pad& pad = piece.pads[i];
    const double room_ml = std::max(0.0, kind.pads[i].void_ml() - pad.inside.volume_ml);
    soak(pad, column::draw_out(vessel, room_ml, catalogue));
    give(vessel, leach(pad, kind.pads[i], catalogue, seconds - kind.fill_s));
  }
  return true;
}

void live(Piece& piece, const PaperKind& kind, const column::Chemistry& chemistry, double room_c,
          double seconds) {
  if (!piece.blotted && kind.run_over_per_s > 0) {
    run_over(piece, -std::expm1(-kind.run_over_per_s * seconds));
  }
  for (std::size_t i = 0; i < piece.pads.size(); ++i) {
    live(piece.pads[i], kind.pads[i], chemistry, room_c, seconds);
  }
}

} // namespace matula::paper
