#pragma once

#include "engine/learner/groups.hpp"

namespace matula::learner {

/// Two neighbouring colours of reduced copper.
struct Swap {
  std::string one;
  std::string other;
  int tubes = 0;        ///< Of either colour,
  int swapped = 0;      ///< and how many of them were called the other.
  double explained = 0; ///< How many the learner's unsteadiness elsewhere leads one to expect.
  double chance = 1;    ///< Of so many or more from unsteadiness alone.
  std::string sentence; ///< Empty unless the readings carry it.
};

/// Every pair of neighbours; nothing for too few readings of copper. A learner's own line between two colours
/// is no swap: tubes are counted against the learner's lines, and unsteadiness from a fit that does not
/// look which of the two was called. The number of swaps is a sum of unlike chances; its tail is summed
/// exactly.
[[nodiscard]] std::vector<Swap> swapped_colours(const std::vector<Group>& groups, const Rules& rules);

} // namespace matula::learner
