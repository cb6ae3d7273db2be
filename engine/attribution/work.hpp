#pragma once

#include "engine/sitting/event.hpp"
#include "sim/bench/bench.hpp"

#include <cstdint>
#include <set>
#include <string>
#include <vector>

namespace matula::attribution {

/// What came of one event of the log when it was played.
struct Heard {
  sitting::Event event;
  bool done = true;
  double start_s = 0; ///< Bench time before and after it.
  double end_s = 0;
  std::uint64_t random_counter = 0; ///< How far chance and papers had been used before it.
  int papers_used = 0;
  std::string new_paper; ///< Piece that came of it; empty for none.
};

/// One thing a learner did that bears on a tube.
struct Step {
  double wait_s = 0; ///< Since the end of the step before.
  bench::Action action;
  std::uint64_t random_counter = 0; ///< So that chance falls as it fell for the learner.
  int papers_used = 0;
};

/// All that bears on one tube or paper, up to its reading: a log with the other tests left out.
struct Work {
  bench::VesselName vessel;      ///< Tube, jar or piece of paper.
  std::set<std::string> vessels; ///< It and every vessel whose contents went into it, but for the specimen.
  std::vector<Step> steps;
  double last_wait_s = 0; ///< From the last step to the reading.
};

/// What bears on `vessel`, of the first `upto` events of a sitting; it was read at `read_at_s`.
[[nodiscard]] Work work_on(const std::vector<Heard>& sitting, std::size_t upto, double read_at_s,
                           const bench::VesselName& vessel);

} // namespace matula::attribution
