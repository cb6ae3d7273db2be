#pragma once

#include "engine/scoring/report.hpp"

#include <string>
#include <vector>

namespace matula::assets {
struct World;
}
namespace matula::scenario {
struct Scenario;
}
namespace matula::scoring {
struct Standards;
}

namespace matula::attribution {

/// What one deviation did to a reading.
struct Share {
  std::string key;   ///< "heat.1", "volume.specimen"
  std::string words; ///< "40 s in the flame instead of 2 min"
  double amount = 0; ///< What putting it right changes, in grades (or relative density).
  std::string rule;  ///< Rule of the procedure it broke; empty when within the method.
};

/// Why one reading came out as it did.
struct Explanation {
  std::string test; ///< A procedure's key, or "gravity".
  std::string title;
  std::string own_tube;  ///< "your heat and acetic acid test tube"
  bool in_grades = true; ///< Else in relative density.
  bool done = false;     ///< Whether there was a tube to explain.
  double found = 0;      ///< Intensity of the learner's tube in grades, or the figure the learner came to.
  double put_right = 0;  ///< With all that matters put right.
  double by_the_book = 0;
  std::string found_word; ///< As a practised reader would say it.
  std::string book_word;
  std::vector<Share> shares; ///< What changed something visible, largest first; sums to put_right - found.
  std::vector<std::string>
      harmless;       ///< Words of what was not as the method has it, yet changed nothing visible.
  double visible = 0; ///< A smaller change is not seen.
  bool exact = true;  ///< Shares over all orders, and not over some drawn by lot.
  std::size_t replays = 0;
  std::string words; ///< All of it for the learner.
};

/// Explains every reading of a finished sitting by replaying the learner's own work with single deviations
/// put right; `report` are its marks. Uses two threads; the same log gives the same words.
[[nodiscard]] std::vector<Explanation>
explain(const assets::World& world, const scoring::Standards& standards, const scenario::Scenario& scenario,
        const std::vector<sitting::Event>& log, const scoring::Report& report);

} // namespace matula::attribution
