#pragma once

#include "sim/optics/colour.hpp"

#include <string>
#include <vector>

namespace matula::reading {

/// One colour of a reference card as the eye has it before it.
struct CardEntry {
  std::string word;
  double value = 0; ///< In the unit of the row; rising from entry to entry.
  optics::Lab colour;
};

/// A pad held beside its row of the card.
struct PaperReading {
  std::string word;      ///< Of the nearest entry.
  std::size_t entry = 0; ///< Its place in the row.
  double place = 0; ///< Continuous: 0 the first entry, 1 the second ...; half way is a toss-up between two.
  double value = 0; ///< At that place, straight between the entries' values.
  double off =
      0; ///< CIEDE2000 from the row's nearest colour: large when the pad has a colour the card lacks.
};

/// Finds the place along the row whose colour (straight in CIELAB between neighbours) is nearest by
/// CIEDE2000. The row must hold at least one entry.
[[nodiscard]] PaperReading read_paper(const optics::Lab& seen, const std::vector<CardEntry>& row);

/// Place of a value on a scale whose words stand for `values` (rising, at least two): 0 the first word, 1 the
/// second, straight in between, held at the ends.
[[nodiscard]] double place_of(double value, const std::vector<double>& values);

} // namespace matula::reading
