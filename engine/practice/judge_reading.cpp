#include "engine/practice/judging.hpp"
#include "engine/practice/store.hpp"
#include "engine/scoring/explain.hpp"
#include "engine/scoring/numeric.hpp"
#include "engine/scoring/standards.hpp"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <fmt/format.h>

namespace matula::practice {

namespace {

constexpr int marks_each = 10;

std::string how_far(int by) {
  return fmt::format("{} {} too {}", std::abs(by), std::abs(by) == 1 ? "grade" : "grades",
                     by > 0 ? "high" : "low");
}

/// "trace and 1+": the words that earn nearly full marks.
std::string right_words(const scoring::TestRule& test, double intensity, int right_from) {
  std::string words;
  for (std::size_t i = 0; i < test.ordinal.grades; ++i) {
    const auto grade = static_cast<reading::Grade>(i);
    if (scoring::score_intensity(intensity, grade, test.ordinal).per_mille >= right_from) {
      words += (words.empty() ? "" : " and ") + test.word(grade);
    }
  }
  return words;
}

std::string said_of_miss(const scoring::OrdinalResult& result, const scoring::TestRule& test) {
  return result.missed_finding
             ? fmt::format("A finding of \"{}\" or more must reach the doctor; this one would not have.",
                           test.word(test.ordinal.reportable))
         : result.false_alarm ? "A finding would have been reported where there was none to see."
                              : "";
}

} // namespace

void add_up(Judged& judged, int right_from) {
  int earned = 0;
  int possible = 0;
  for (const auto& mark : judged.marks) {
    if (mark.ledger != scoring::Ledger::Safety) {
      earned += mark.earned;
      possible += mark.possible;
    }
  }
  judged.credit = possible > 0 ? earned * 1000 / possible : 0;
  judged.right = judged.credit >= right_from && !judged.safety_stop;
}

Judged judge_tube(const Store& store, const Tube& tube, const std::string& word) {
  const auto& test = *store.standards->rules.find_test(tube.test);
  const int right_from = store.rules.choice.right_from;
  Judged judged;
  judged.written = word;
  judged.expected = test.word(tube.read.grade);
  scoring::Mark mark;
  mark.item = test.item();
  mark.label = "Grade of the " + test.label;
  mark.possible = marks_each;
  mark.entered = word;
  mark.expected = judged.expected;
  judged.words.push_back(fmt::format("It shows {}: {}.", tube.read.seen, judged.expected));
  const auto read = test.grade(word);
  if (!read) {
    mark.reason = "No grade was given. " + judged.words.front();
    judged.marks.push_back(std::move(mark));
    return judged;
  }
  const auto result = scoring::score_intensity(tube.read.intensity, *read, test.ordinal);
  mark.earned = scoring::marks_for(result.per_mille, mark.possible);
  judged.credit = result.per_mille; // Finer than the marks.
  judged.right = result.per_mille >= right_from;
  judged.on_a_line = result.borderline;
  if (result.borderline) {
    judged.words.push_back(fmt::format(
        "It stands on a line between two grades: practised readers part over it, and {} count alike.",
        right_words(test, tube.read.intensity, right_from)));
  }
  if (!judged.right) {
    mark.reason = fmt::format("You wrote {}: {}. {} {}", word,
                              how_far(static_cast<int>(*read) - static_cast<int>(tube.read.grade)),
                              judged.words.front(), said_of_miss(result, test));
    judged.words.push_back(said_of_miss(result, test));
  }
  judged.marks.push_back(std::move(mark));
  return judged;
}

Judged judge_float(const Store& store, const FloatJar& jar, const std::string& entry) {
  const double division = store.standards->rules.gravity.division;
  const double level = jar.shows.reading_at_surface;
  const double from_start = level + jar.eye_mm * jar.shows.parallax_per_mm;
  Judged judged;
  judged.written = entry;
  judged.expected = scoring::say_gravity(level);
  scoring::Mark mark;
  mark.item = "sg.reading";
  mark.label = "Urinometer reading";
  mark.possible = marks_each;
  mark.entered = entry;
  mark.expected = judged.expected;
  judged.words.push_back(
      fmt::format("An eye level with the surface reads {} at the bottom of the meniscus.", judged.expected));
  const auto number = scoring::number_from_text(entry);
  if (number) {
    const double error = scoring::reading_error(*number, level, division);
    mark.earned = scoring::marks_for(
        scoring::credit_per_mille(error, store.rules.floats.full, store.rules.floats.none), mark.possible);
  }
  if (mark.earned < mark.possible && number) {
    const auto is = [&](double other) { return std::abs(*number - other) < 0.7 * division; };
    const bool top = is(jar.shows.reading_at_meniscus_top);
    const bool eye = std::abs(from_start - level) > division && is(from_start);
    judged.fault = top ? "top of the meniscus" : eye ? "eye not level" : "";
    if (top) {
      judged.words.push_back(
          fmt::format("{} is where the liquid climbs to on the stem; the reading is taken at the bottom of "
                      "the meniscus, in the plane of the surface.",
                      scoring::say_gravity(jar.shows.reading_at_meniscus_top)));
    } else if (eye) {
      judged.words.push_back(fmt::format("{} is what the eye met {:.0f} mm {} the surface, where it began.",
                                         scoring::say_gravity(from_start), std::abs(jar.eye_mm),
                                         jar.eye_mm > 0 ? "above" : "below"));
    }
  }
  if (mark.earned < mark.possible) {
    mark.reason = (number ? "You wrote " + entry + ". " : "No number was written. ") + judged.words.front();
    mark.reason += judged.words.size() > 1 ? " " + judged.words.back() : "";
  }
  judged.marks.push_back(std::move(mark));
  add_up(judged, store.rules.choice.right_from);
  return judged;
}

} // namespace matula::practice
