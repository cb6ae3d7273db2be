#include "sim/paper/card.hpp"

#include "sim/paper/pad_look.hpp"

#include <algorithm>

namespace matula::paper {

Pad dipped_pad(const PadKind& kind, const matter::Mixture& liquid, const column::Chemistry& chemistry,
               double room_c, double seconds) {
  Pad pad = dry_pad(kind, *chemistry.catalogue, room_c);
  matter::Mixture from = liquid;
  soak(pad, matter::draw(from, kind.void_ml()));
  for (double at_s = 0; at_s < seconds; at_s += pad_step_s) {
    live(pad, kind, chemistry, room_c, std::min(pad_step_s, seconds - at_s));
  }
  return pad;
}

Card make_card(const PaperKind& kind, const column::Chemistry& chemistry,
               const std::vector<appearance::ScatterTable>& scatter, double room_c) {
  Card card;
  for (const PadKind& pad : kind.pads) {
    CardRow& row = card.emplace_back();
    for (const Level& level : pad.levels) {
      const matter::Mixture standard = specimen::make_liquid(level.specimen, *chemistry.catalogue);
      const Pad dipped = dipped_pad(pad, standard, chemistry, room_c, pad.read_at_s);
      row.push_back({level.word, level.value, reflectance(dipped, pad, *chemistry.catalogue, scatter)});
    }
  }
  return card;
}

} // namespace matula::paper
