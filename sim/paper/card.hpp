#pragma once

#include "sim/appearance/optics_tables.hpp"
#include "sim/paper/piece.hpp"

namespace matula::paper {

/// One printed field of a reference card.
struct CardField {
  std::string word;
  double value = 0;
  optics::Spectrum reflectance{};
};

/// Fields of one pad, in the order of its levels.
using CardRow = std::vector<CardField>;

/// A reference card: one row a pad. Nothing is painted: every field is the pad itself, dipped by the book
/// into the standard specimen of its level, blotted, and looked at in its time of reading.
using Card = std::vector<CardRow>;

/// Seconds between two looks at the chemistry of a living pad.
inline constexpr double pad_step_s = 1;

[[nodiscard]] Card make_card(const PaperKind& kind, const column::Chemistry& chemistry,
                             const std::vector<appearance::ScatterTable>& scatter, double room_c);

/// A pad dipped into `liquid` by the book and lived for `seconds`.
[[nodiscard]] Pad dipped_pad(const PadKind& kind, const matter::Mixture& liquid,
                             const column::Chemistry& chemistry, double room_c, double seconds);

} // namespace matula::paper
