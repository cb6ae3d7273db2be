#pragma once

#include "engine/sitting/event.hpp"

#include <string>
#include <vector>

namespace matula::assets {
struct World;
}
namespace matula::scenario {
struct Scenario;
}

namespace matula::scoring {

/// Ledgers are kept apart and never summed into one figure.
enum class Ledger { Reading, Interpretation, Arithmetic, Process, Safety };

/// One thing that was marked.
struct Mark {
  Ledger ledger = Ledger::Reading;
  std::string item;  ///< "ssa.grade", "sg.step.temperature", "process.heat.time"
  std::string label; ///< For a person: "SSA grade"
  int earned = 0;    ///< Per mille of `possible` is never stored: marks are whole numbers.
  int possible = 0;
  std::string entered;  ///< What the learner wrote; empty when nothing.
  std::string expected; ///< What the tube (or the arithmetic) showed.
  std::string reason;   ///< For every lost mark: what was seen, what was there, and why.
};

/// The same test done by the book, for showing beside the learner's tube.
struct ByTheBook {
  std::string test;              ///< "heat"
  std::string title;             ///< "Heat and acetic acid"
  std::string learner_vessel;    ///< Empty when the test was not done.
  double learner_read_at_s = 0;  ///< Bench time at which the learner recorded it.
  std::string reference_word;    ///< Reference reading of the tube by the book.
  double learner_intensity = 0;  ///< Of the learner's own tube at that time, in grades.
  std::string learner_tube_word; ///< Reference reading of the learner's own tube at that time.
};

struct Report {
  std::vector<Mark> marks;
  std::vector<ByTheBook> tubes;
  bool safety_stop = false;
  std::string debrief;

  [[nodiscard]] int earned(Ledger ledger) const;
  [[nodiscard]] int possible(Ledger ledger) const;
};

/// Marks a sitting by replaying its log. Pure: the same log gives the same report on every machine.
[[nodiscard]] Report score(const assets::World& world, const scenario::Scenario& scenario,
                           const std::vector<sitting::Event>& log);

} // namespace matula::scoring
