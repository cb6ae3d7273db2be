#pragma once

#include <cstddef>
#include <span>

namespace matula::statistics {

/// One answer to an item of known difficulty.
struct Answer {
  double difficulty =
      0; ///< On the scale of abilities; 0 is what a middling learner gets right half the time.
  bool right = false;
};

struct Ability {
  double mean = 0; ///< Of the posterior.
  double sd = 1;
};

/// Expected ability after these answers, by the Rasch model with a standard normal prior, summed over a grid
/// of 81 points from -4 to 4. G. Rasch 1960; R.D. Bock and R.J. Mislevy, Appl. Psychol. Meas. 6 (1982) 431.
[[nodiscard]] Ability estimate_ability(std::span<const Answer> answers);

/// Chance of a right answer.
[[nodiscard]] double chance_right(double ability, double difficulty);

/// Difficulty an item should have for a learner to get it right with this chance: practice near 0.75,
/// measurement near 0.5.
[[nodiscard]] double difficulty_for(double ability, double chance);

} // namespace matula::statistics
