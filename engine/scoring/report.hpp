#pragma once

#include "engine/sitting/event.hpp"

#include <optional>
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

/// How a graded reading stood to what the tube showed, for sums over many readings.
struct Graded {
  int truth = 0;            ///< As a practised reader read that very tube: an index into the test's words.
  std::optional<int> read;  ///< As the learner did; nothing when nothing was written.
  double intensity = 0;     ///< Of the tube, in grades.
  int per_mille = 0;        ///< What the answer earned.
  std::vector<int> answers; ///< What each answer would have earned, per mille.
  bool missed_finding = false;
  bool false_alarm = false;
};

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
  /// For every lost mark: the one fault it is charged to, as the item of that fault, and in words.
  std::string root;
  std::string root_words;
  std::optional<Graded> graded; ///< Only of a word for what a tube shows.
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

/// All that was lost through one fault.
struct RootLoss {
  std::string root;
  std::string words;
  int lost = 0;                   ///< Marks, over all ledgers.
  std::vector<std::string> items; ///< The marks it was lost in.
};

/// A finding: read right or wrong, and the case interpreted right or wrong.
struct Finding {
  std::string test;
  std::string label;
  bool read_right = false;
  bool interpreted_right = false;
  std::string words;
};

/// How the graded readings of a sitting stand, in whole per mille. Tolerance can be gamed by always giving
/// one middling answer: skill is what was earned above the best of those.
struct Standing {
  int readings = 0;
  int mean = 0;
  int best_constant = 0;
  std::optional<int> skill; ///< (mean - best constant) / (1000 - best constant); nothing where that is all.
  int exact = 0;            ///< Of the readings, so many
  int within_one = 0;
  int missed_findings = 0;
  int false_alarms = 0;
  bool passed = false; ///< Mean, missed findings and safety, each by itself: none makes up for another.
  std::vector<std::string> not_passed_because;
};

struct Report {
  std::vector<Mark> marks;
  std::vector<ByTheBook> tubes;
  std::vector<RootLoss> losses; ///< Largest first; every lost mark is in exactly one.
  std::vector<Finding> findings;
  Standing standing;
  bool safety_stop = false;
  std::string debrief;

  [[nodiscard]] int earned(Ledger ledger) const;
  [[nodiscard]] int possible(Ledger ledger) const;
};

/// The standing in sentences, one a line.
[[nodiscard]] std::vector<std::string> say(const Standing& standing);

/// Marks a sitting by replaying its log. Pure: the same log gives the same report on every machine.
[[nodiscard]] Report score(const assets::World& world, const scenario::Scenario& scenario,
                           const std::vector<sitting::Event>& log);

} // namespace matula::scoring
