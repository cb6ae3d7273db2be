#pragma once

#include "engine/scoring/moments.hpp"
#include "engine/scoring/report.hpp"

namespace matula::scoring {

/// What every ledger is marked from.
struct Case {
  const assets::World& world;
  const scenario::Scenario& scenario;
  const Rulebook& book;
  const Replay& replay;

  /// What was written for an item, without blanks around it; empty when nothing.
  [[nodiscard]] std::string entry(const std::string& item) const;
  /// Whether the scenario asks for a test or part.
  [[nodiscard]] bool asks(const std::string& part) const;
};

/// A test done by the book on the same specimen beside the learner's tube.
struct Compared {
  ByTheBook tubes;
  double learner_intensity = 0;
  double book_intensity = 0;
};

[[nodiscard]] std::vector<Mark> mark_grades(const Case& marked);
/// A test with a curve of standards: each absorbance as the photometer showed it, each line of the
/// calculation from the learner's own lines before it.
[[nodiscard]] std::vector<Mark> mark_curve(const Case& marked, const TestRule& test);
[[nodiscard]] std::vector<Mark> mark_looks(const Case& marked);
[[nodiscard]] std::vector<Mark> mark_gravity(const Case& marked);
[[nodiscard]] std::vector<Mark> mark_decisions(const Case& marked);
[[nodiscard]] std::vector<Mark> mark_process(const Case& marked);
[[nodiscard]] std::vector<Mark> mark_safety(const Case& marked, bool& stop);
/// The verdict at the counter, the faults named, the 24-hour exercise; nothing when the case has no delivery.
[[nodiscard]] std::vector<Mark> mark_reception(const Case& marked, bool& stop);
/// Says, at no cost in marks, where a tube told less of the specimen than the same test by the book would
/// have; `process` are the marks of the procedure, which say whether anything was done wrong.
[[nodiscard]] std::vector<Mark> note_specimen(const Case& marked, const std::vector<Compared>& compared,
                                              const std::vector<Mark>& process);

} // namespace matula::scoring
