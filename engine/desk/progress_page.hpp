#pragma once

#include "engine/desk/beside.hpp"

#include <optional>
#include <string>
#include <vector>

namespace matula::desk {

/// One skill, as far as the answers tell; every sentence empty where there is nothing to say.
struct SkillProgress {
  std::string title;
  int answers = 0; ///< In drills and quizzes.
  std::string state;
  std::string trend;
  std::string graded; ///< How readings of tubes went, sittings too.
  std::string due;
};

/// A line between two grades, in grades.
struct ShownLine {
  double reference = 0; ///< A practised reader's,
  double own = 0;       ///< the learner's,
  double low = 0;       ///< and what holds that nine times in ten.
  double high = 0;
};

/// Where the learner draws the lines between grades, beside the reference reader's.
struct OwnLines {
  std::string key;
  std::string title;
  std::string test;                                ///< One of it whose tubes can be shown; empty for none.
  appearance::Card card = appearance::Card::Black; ///< They are held against.
  std::vector<std::string> words;                  ///< Of the grades.
  int readings = 0;
  std::vector<ShownLine> lines;        ///< One fewer than the words; empty for too few readings.
  std::vector<std::string> sentences;  ///< Only what the readings carry.
  bool off = false;                    ///< Surely too high or too low on the whole.
  std::optional<std::size_t> disputed; ///< Of `lines`: surely and farthest off.

  /// What has most to say comes first.
  [[nodiscard]] int rank() const { return disputed ? 2 : off ? 1 : 0; }
};

/// What a learner may want to know of the own progress, in one page.
struct ProgressPage {
  std::vector<std::string> tomorrow; ///< What to change, dearest first.
  std::vector<SkillProgress> skills;
  std::vector<OwnLines> lines;
  std::vector<std::string> colours; ///< Which copper colours are taken for each other.
  std::string trouble;              ///< Lines of the record that could not be read.
};

} // namespace matula::desk
