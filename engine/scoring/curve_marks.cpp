#include "engine/scenario/scenario.hpp"
#include "engine/scoring/curve.hpp"
#include "engine/scoring/ledgers.hpp"
#include "engine/scoring/numeric.hpp"

#include <cctype>
#include <fmt/format.h>

namespace matula::scoring {
namespace {

using procedure::CurveItem;
using procedure::CurveLine;

std::string as_label(std::string words) {
  words.front() = static_cast<char>(std::toupper(static_cast<unsigned char>(words.front())));
  return words;
}

Mark start(const Case& marked, Ledger ledger, const CurveItem& one, int possible) {
  Mark mark;
  mark.ledger = ledger;
  mark.item = one.item;
  mark.label = as_label(one.words);
  mark.possible = possible;
  mark.entered = marked.entry(one.item);
  return mark;
}

/// What the photometer showed for a tube before its figure was written, or last of all.
struct Shown {
  bool read = false;
  std::string vessel;
  std::optional<double> figure; ///< Nothing when it was over the end of the scale.
};

Shown shown_for(const Case& marked, const TestRule& test, const CurveItem& one) {
  const auto written = marked.replay.written.find(one.item);
  if (written != marked.replay.written.end()) {
    return {!written->second.vessel.empty(), written->second.vessel, written->second.figure};
  }
  const auto* last = marked.replay.watch.photometer.last(test, role_of_line(one.line), one.standard);
  if (last == nullptr) {
    return {};
  }
  return {true, last->vessel, last->off_scale ? std::nullopt : std::optional(last->value)};
}

void judge_reading(Mark& mark, const Shown& shown, const TestRule& test) {
  if (!shown.read) {
    mark.reason = mark.entered.empty()
                      ? "No such tube was read in the photometer, and nothing was written."
                      : "No such tube had been read in the photometer when this was written.";
    return;
  }
  if (!shown.figure) {
    mark.reason = "The photometer was over the end of its scale, so no figure could be written: make the "
                  "specimen weaker and read it again.";
    return;
  }
  mark.expected = fmt::format("{:.3f}", *shown.figure);
  const auto entry = number_from_text(mark.entered);
  if (!entry) {
    mark.reason =
        fmt::format("No figure was written. The photometer showed {} for {}.", mark.expected, shown.vessel);
    return;
  }
  const double error = reading_error(*entry, *shown.figure, test.number.division);
  mark.earned = marks_for(credit_per_mille(error, test.number.full, test.number.none), mark.possible);
  if (mark.earned < mark.possible) {
    mark.reason = fmt::format("You wrote {}. The photometer showed {} for {}.", mark.entered, mark.expected,
                              shown.vessel);
  }
}

std::optional<double> own_or_shown(const Case& marked, const TestRule& test, const CurveItem& one) {
  const auto own = number_from_text(marked.entry(one.item));
  return own ? own : shown_for(marked, test, one).figure;
}

CurveEntries entries_of(const Case& marked, const TestRule& test, const std::vector<CurveItem>& items) {
  CurveEntries entries;
  for (const CurveItem& one : items) {
    switch (one.line) {
    case CurveLine::Blank:
      entries.blank = own_or_shown(marked, test, one);
      break;
    case CurveLine::Standard:
      entries.standards.push_back(own_or_shown(marked, test, one));
      break;
    case CurveLine::Sample:
      entries.sample = own_or_shown(marked, test, one);
      break;
    case CurveLine::Net:
      entries.net = marked.entry(one.item);
      break;
    case CurveLine::Read:
      entries.read = marked.entry(one.item);
      break;
    case CurveLine::Dilution:
      entries.dilution = marked.entry(one.item);
      break;
    case CurveLine::Value:
      entries.value = marked.entry(one.item);
      break;
    }
  }
  if (const auto* sample = marked.replay.watch.photometer.last(test, TubeRole::Sample); sample != nullptr) {
    entries.own_dilution = times_diluted(*sample, test);
  }
  return entries;
}

} // namespace

std::vector<Mark> mark_curve(const Case& marked, const TestRule& test) {
  const auto items = procedure::curve_items(test);
  std::vector<const CurveItem*> readings;
  std::vector<const CurveItem*> lines;
  for (const CurveItem& one : items) {
    (one.is_reading() ? readings : lines).push_back(&one);
  }
  const int weight = marked.scenario.marking.grade_weight;
  const auto reading_marks = split_marks(weight, std::vector<int>(readings.size(), 1));
  const auto line_marks = split_marks(weight, std::vector<int>(lines.size(), 1));
  std::vector<Mark> marks;
  for (std::size_t i = 0; i < readings.size(); ++i) {
    Mark mark = start(marked, Ledger::Reading, *readings[i], reading_marks[i]);
    judge_reading(mark, shown_for(marked, test, *readings[i]), test);
    marks.push_back(std::move(mark));
  }
  const auto verdicts = mark_curve_lines(*test.curve, test.number.unit, entries_of(marked, test, items));
  for (std::size_t i = 0; i < lines.size() && i < verdicts.size(); ++i) {
    Mark mark = start(marked, Ledger::Arithmetic, *lines[i], line_marks[i]);
    mark.expected = verdicts[i].judged.expected;
    mark.earned = verdicts[i].judged.right ? mark.possible : 0;
    mark.reason = verdicts[i].judged.reason;
    marks.push_back(std::move(mark));
  }
  return marks;
}

} // namespace matula::scoring
