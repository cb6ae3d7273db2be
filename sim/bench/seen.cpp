#include "sim/bench/seen.hpp"

namespace matula::bench {

std::optional<SeenPad> pad_in(const Scene& scene, const std::string& paper, const std::string& key) {
  for (const SeenPaper& piece : scene.papers) {
    for (const SeenPad& pad : piece.pads) {
      if (piece.name == paper && pad.key == key) {
        return pad;
      }
    }
  }
  return std::nullopt;
}

SeenCardRow card_row_in(const Scene& scene, const std::string& kind, const std::string& key) {
  for (const SeenCard& card : scene.cards) {
    for (const SeenCardRow& row : card.rows) {
      if (card.kind == kind && row.key == key) {
        return row;
      }
    }
  }
  return {};
}

} // namespace matula::bench
