#pragma once

#include "engine/scoring/report.hpp"
#include "sim/bench/action.hpp"

#include <string>
#include <vector>

namespace matula::classroom {

/// A mark that stands at a line of the log, and why there.
struct Charged {
  scoring::Mark mark;
  std::string how; ///< "for what was written here"
};

/// One line of a stored log, in words.
struct Line {
  double time_s = 0;        ///< Bench time.
  std::string words;        ///< "pours 5 mL from the specimen into tube 1"
  std::string answer;       ///< What the bench answered; empty for nothing.
  bool refused = false;     ///< The bench did not do it.
  bool tick = false;        ///< Only keeps the time: the student did nothing.
  bench::VesselName vessel; ///< The vessel it is about; empty for none.
  std::vector<Charged> marks;

  [[nodiscard]] int lost() const {
    int sum = 0;
    for (const Charged& one : marks) {
      sum += one.mark.possible - one.mark.earned;
    }
    return sum;
  }
};

} // namespace matula::classroom
