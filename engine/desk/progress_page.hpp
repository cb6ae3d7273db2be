#pragma once

#include "engine/desk/beside.hpp"

#include <array>
#include <optional>
#include <string>
#include <vector>

namespace matula::desk {

/// One skill, as far as the answers tell.
struct SkillProgress {
  std::string title;
  int answers = 0;
  std::string state; ///< In words: "mastered", "coming", "too few answers to say"...
  std::string trend; ///< In words, with what is uncertain about it.
  std::string
      exact; ///< "31 of 40 exact, 38 within one grade, 1 finding missed"; empty where nothing was graded.
  std::string due; ///< What has faded; empty for nothing.
  int missed = 0;  ///< Findings written as negative.
  double ability = 0;
  double ability_sd = 1;
};

/// Where the learner draws the lines between grades, beside the reference reader's.
struct OwnLines {
  static constexpr std::size_t lines = 5;
  std::string key;                                 ///< For the control.
  std::string title;                               ///< "Clouds of protein"
  std::string test;                                ///< Of it, one whose tubes are shown.
  appearance::Card card = appearance::Card::Black; ///< They are held against.
  std::vector<std::string> words;                  ///< Of the six grades.
  int readings = 0;
  std::array<double, lines> reference{};
  std::array<double, lines> own{};
  std::array<double, lines> within{};  ///< Half of the interval that holds a line nine times in ten.
  bool shows_lines = false;            ///< Enough readings for single lines.
  bool off = false;                    ///< Surely too high or too low on the whole.
  std::vector<std::string> sentences;  ///< Only what the evidence carries.
  std::optional<std::size_t> disputed; ///< The line whose distance from the reference is sure and largest.

  /// What has most to say comes first.
  [[nodiscard]] int rank() const { return disputed ? 2 : off ? 1 : 0; }
};

/// What a learner may want to know of the own progress, in one page.
struct ProgressPage {
  std::vector<std::string> tomorrow; ///< What to change, the surest first.
  std::vector<SkillProgress> skills;
  std::vector<OwnLines> lines;
  std::vector<std::string> colours; ///< Which copper colours are taken for each other.
  std::string trouble;              ///< Lines of the record that could not be read.
};

} // namespace matula::desk
