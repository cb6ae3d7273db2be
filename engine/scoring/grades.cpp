#include "engine/scenario/scenario.hpp"
#include "engine/scoring/explain.hpp"
#include "engine/scoring/ledgers.hpp"
#include "engine/scoring/numeric.hpp"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <fmt/format.h>
#include <fmt/ranges.h>
#include <iterator>

namespace matula::scoring {
namespace {

using reading::Grade;

std::string distance_words(Grade read, Grade shown) {
  static constexpr const char* numbers[] = {
      "", "one grade", "two grades", "three grades", "four grades", "five grades"};
  const int d = static_cast<int>(read) - static_cast<int>(shown);
  return fmt::format("{} too {}", numbers[std::abs(d)], d > 0 ? "high" : "low");
}

std::string consequence(const OrdinalResult& result, const TestRule& test) {
  if (result.missed_finding) {
    return fmt::format(" A finding of \"{}\" or more must reach the doctor; here it would have been missed.",
                       test.word(test.ordinal.reportable));
  }
  if (result.false_alarm) {
    return " A finding would have been reported where there was none to see.";
  }
  return "";
}

std::string explain(const Moment& moment, Grade read, const OrdinalResult& result, const TestRule& test) {
  const auto& tube = *moment.tube;
  std::string text = fmt::format(
      "You wrote {}. {} showed at that moment: {}. That is read as {}, so your grade is {}.", test.word(read),
      capital(own_tube(test)), tube.seen, test.word(tube.grade), distance_words(read, tube.grade));
  if (result.borderline) {
    text += " The tube stood near a line between two grades, and the marks allow for that.";
  }
  return text + consequence(result, test);
}

/// How the tube stood to every answer there is; what was written is filled in later.
Graded graded_tube(const reading::GradeReading& tube, const TestRule& test) {
  Graded graded;
  graded.truth = static_cast<int>(tube.grade);
  graded.intensity = tube.intensity;
  for (std::size_t y = 0; y < test.words.size(); ++y) {
    graded.answers.push_back(score_intensity(tube.intensity, static_cast<Grade>(y), test.ordinal).per_mille);
  }
  return graded;
}

void judge(Mark& mark, const Moment& moment, const TestRule& test) {
  if (!moment.tube) {
    mark.reason =
        fmt::format("A grade was written for the {}, but no tube with the specimen and its reagent stood on "
                    "the bench, so nothing had been seen.",
                    test.label);
    return;
  }
  mark.expected = test.word(moment.tube->grade);
  const auto read = test.grade(mark.entered);
  if (!read) {
    mark.reason = fmt::format("\"{}\" is not a grade; the words are {}. {} showed: {}.", mark.entered,
                              fmt::join(test.words, ", "), capital(own_tube(test)), moment.tube->seen);
    return;
  }
  const auto result = score_intensity(moment.tube->intensity, *read, test.ordinal);
  mark.graded->read = static_cast<int>(*read);
  mark.graded->per_mille = result.per_mille;
  mark.graded->missed_finding = result.missed_finding;
  mark.graded->false_alarm = result.false_alarm;
  mark.earned = marks_for(result.per_mille, mark.possible);
  if (mark.earned < mark.possible) {
    mark.reason = explain(moment, *read, result, test);
  }
}

std::string say_figure(double value, const TestRule& test) {
  constexpr double rounding = 1e-9;
  const int digits = std::max(0, static_cast<int>(std::ceil(-std::log10(test.number.division) - rounding)));
  return fmt::format("{:.{}f}{}{}", value, digits, test.number.unit.empty() ? "" : " ", test.number.unit);
}

void judge_figure(Mark& mark, const Moment& moment, const TestRule& test) {
  if (!moment.figure) {
    mark.reason = fmt::format("The {} was not used, so nothing had been read.", test.label);
    return;
  }
  mark.expected = say_figure(*moment.figure, test);
  const auto read = number_from_text(mark.entered);
  if (!read) {
    mark.reason = fmt::format("{} It showed {}.",
                              mark.entered.empty() ? "Nothing was written."
                                                   : fmt::format("\"{}\" is not a number.", mark.entered),
                              mark.expected);
    return;
  }
  const double error = reading_error(*read, *moment.figure, test.number.division);
  mark.earned = marks_for(credit_per_mille(error, test.number.full, test.number.none), mark.possible);
  if (mark.earned < mark.possible) {
    mark.reason = fmt::format("You wrote {}. The {} showed {}.", mark.entered, test.label, mark.expected);
  }
}

} // namespace

std::vector<Mark> mark_grades(const Case& marked) {
  std::vector<Mark> marks;
  for (const auto& test : marked.book.tests) {
    if (!marked.asks(test.key)) {
      continue;
    }
    if (test.curve) {
      auto curve = mark_curve(marked, test);
      marks.insert(marks.end(), std::make_move_iterator(curve.begin()), std::make_move_iterator(curve.end()));
      continue;
    }
    Mark mark;
    mark.item = test.item();
    mark.label = (test.result == procedure::Result::Word ? "Grade of the " : "Reading of the ") + test.label;
    mark.possible = marked.scenario.marking.grade_weight;
    mark.entered = marked.entry(mark.item);
    const auto& moment = marked.replay.tests.at(test.key);
    if (moment.tube) {
      mark.graded = graded_tube(*moment.tube, test);
    }
    if (test.result == procedure::Result::Number) {
      judge_figure(mark, moment, test);
    } else if (mark.entered.empty()) {
      mark.expected = moment.tube ? test.word(moment.tube->grade) : "";
      mark.reason = moment.tube ? fmt::format("No grade was written. {} showed: {}.", capital(own_tube(test)),
                                              moment.tube->seen)
                                : fmt::format("No grade was written and the {} was not done.", test.label);
    } else {
      judge(mark, moment, test);
    }
    marks.push_back(std::move(mark));
  }
  return marks;
}

} // namespace matula::scoring
