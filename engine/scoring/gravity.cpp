#include "engine/assets/world.hpp"
#include "engine/scenario/scenario.hpp"
#include "engine/scoring/explain.hpp"
#include "engine/scoring/gravity_basis.hpp"
#include "engine/scoring/ledgers.hpp"
#include "engine/scoring/numeric.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <fmt/format.h>

namespace matula::scoring {
namespace {

struct Line {
  const char* item;
  const char* label;
};
constexpr std::array<Line, 5> lines{{{"sg.step.zero", "Correction for the float's own error"},
                                     {"sg.step.temperature", "Correction for temperature"},
                                     {"sg.step.protein", "Correction for protein"},
                                     {"sg.step.glucose", "Correction for glucose"},
                                     {"sg.corrected", "Corrected specific gravity"}}};

Mark start(const Case& marked, Ledger ledger, const char* item, const char* label, int possible) {
  Mark mark;
  mark.ledger = ledger;
  mark.item = item;
  mark.label = label;
  mark.possible = possible;
  mark.entered = marked.entry(item);
  return mark;
}

Mark mark_reading(const Case& marked, int possible) {
  Mark mark = start(marked, Ledger::Reading, "sg.reading", "Urinometer reading", possible);
  const auto entry = number_from_text(mark.entered);
  const auto& seen = marked.replay.float_at_reading;
  if (!seen) {
    mark.reason =
        "The float never stood in the specimen before the reading was written, so there was nothing to read.";
    return mark;
  }
  const double level = seen->scale.reading_at_surface;
  mark.expected = say_gravity(level);
  if (!entry) {
    mark.reason = fmt::format("No number was written. The scale showed {} at the surface.", mark.expected);
    return mark;
  }
  // Marked against what the learner's eye met; a wrong eye level is a fault of procedure and charged there.
  const auto eye = marked.replay.watch.eye_mm.find(seen->vessel);
  const double off_mm = eye == marked.replay.watch.eye_mm.end() ? 0 : eye->second;
  const double met = level + off_mm * seen->scale.parallax_per_mm;
  const double division = marked.book.gravity.division;
  const double error = std::min(reading_error(*entry, level, division), reading_error(*entry, met, division));
  const auto& marking = marked.scenario.marking;
  mark.earned = marks_for(credit_per_mille(error, marking.gravity_full, marking.gravity_none), possible);
  if (mark.earned < possible) {
    const bool top = std::abs(*entry - seen->scale.reading_at_meniscus_top) < division;
    mark.reason = fmt::format("You wrote {}. The scale cut the surface at {}{}.", say_gravity(*entry),
                              mark.expected, top ? "; what you wrote is the top of the meniscus" : "");
  }
  return mark;
}

Mark mark_zero(const Case& marked) {
  Mark mark = start(marked, Ledger::Reading, "sg.zero", "Float's reading in water",
                    marked.scenario.marking.look_weight);
  const auto entry = number_from_text(mark.entered);
  const auto& water = marked.replay.watch.in_water;
  if (!water) {
    mark.reason = "The float was never put into distilled water, so its own error was not seen.";
    return mark;
  }
  const double shown = water->scale.reading_at_surface - 1;
  mark.expected = say_gravity(1 + shown);
  if (!entry) {
    mark.reason = fmt::format("No number was written. In water the scale showed {}.", mark.expected);
    return mark;
  }
  const double own = std::abs(*entry) > 0.5 ? *entry - 1 : *entry;
  const double error =
      std::min(reading_error(own, shown, marked.book.gravity.division),
               reading_error(own, marked.scenario.urinometer_zero_error, marked.book.gravity.division));
  const auto& marking = marked.scenario.marking;
  mark.earned = marks_for(credit_per_mille(error, marking.gravity_full, marking.gravity_none), mark.possible);
  if (mark.earned < mark.possible) {
    mark.reason = fmt::format("You wrote {}. In water the scale showed {}.", mark.entered, mark.expected);
  }
  return mark;
}

Mark mark_temperature(const Case& marked) {
  Mark mark = start(marked, Ledger::Reading, "sg.temperature", "Temperature of the specimen",
                    marked.scenario.marking.look_weight);
  const auto entry = number_from_text(mark.entered);
  const auto& seen = marked.replay.float_at_reading;
  const auto written = marked.replay.written.find("sg.temperature");
  std::optional<double> shown = seen ? std::optional<double>(seen->liquid_c) : std::nullopt;
  if (written != marked.replay.written.end() && written->second.thermometer_c) {
    shown = written->second.thermometer_c;
  }
  mark.expected = shown ? fmt::format("{} °C", say_number(*shown)) : "";
  if (!entry || !shown) {
    mark.reason = shown ? "No temperature was written; the liquid in the jar was at " + mark.expected + "."
                        : "There was no specimen in the jar and no thermometer reading to write down.";
    return mark;
  }
  const auto& marking = marked.scenario.marking;
  const int credit =
      credit_per_mille(*entry - *shown, marking.temperature_full_c, marking.temperature_none_c);
  mark.earned = marks_for(credit, mark.possible);
  if (mark.earned < mark.possible) {
    mark.reason =
        fmt::format("You wrote {} °C; the thermometer showed {}.", say_number(*entry), mark.expected);
  }
  return mark;
}

/// Whether anything of the calculation was written down before its last line.
bool worked_out(const std::vector<Step>& steps) {
  return std::any_of(steps.begin(), steps.end() - 1,
                     [](const Step& step) { return step.entered.has_value(); });
}

std::string step_reason(const Mark& mark, const StepVerdict& verdict, const Step& step) {
  const auto slip = verdict.slip.empty() ? std::string() : ": " + verdict.slip;
  if (!verdict.written) {
    const std::string due = say_correction(step.expected);
    return verdict.slip.empty()
               ? fmt::format("No line was written for it, and no later line holds it ({}).",
                             due == "0" ? "nothing to add or take away here, but that has to be said"
                                        : due + " was due")
               : fmt::format("No line was written for it, and your next line shows why{}.", slip);
  }
  return fmt::format("From your own line {} the step leads to {} ({}). You wrote {}{}.",
                     say_gravity(verdict.from), say_gravity(verdict.expected_line),
                     say_correction(step.expected), mark.entered, slip);
}

} // namespace

std::vector<Mark> mark_gravity(const Case& marked) {
  std::vector<Mark> marks;
  if (!marked.scenario.asked.specific_gravity) {
    return marks;
  }
  const auto& shares = marked.book.gravity.shares;
  const auto possible = split_marks(marked.scenario.marking.gravity_weight, {shares.begin(), shares.end()});
  marks.push_back(mark_zero(marked));
  marks.push_back(mark_temperature(marked));
  marks.push_back(mark_reading(marked, possible[0]));
  const auto own_reading = number_from_text(marked.entry("sg.reading"));
  const auto& seen = marked.replay.float_at_reading;
  const double begin = own_reading ? *own_reading : (seen ? seen->scale.reading_at_surface : 1.0);
  const auto steps = gravity_steps(gravity_basis(marked), gravity_lines(marked));
  const auto verdicts = mark_chain(begin, steps);
  for (std::size_t i = 0; i < lines.size(); ++i) {
    Mark mark = start(marked, Ledger::Arithmetic, lines[i].item, lines[i].label, possible[i + 1]);
    // A line that is right is right as it was written: several roundings lead to it.
    const bool right = verdicts[i].right && !mark.entered.empty();
    mark.expected = right ? mark.entered : say_gravity(verdicts[i].expected_line);
    if (!seen && !worked_out(steps)) {
      mark.reason = "The float never stood in the specimen and no step was written: there was nothing to "
                    "correct, and a figure alone shows no calculation.";
      marks.push_back(std::move(mark));
      continue;
    }
    mark.earned = verdicts[i].right ? mark.possible : 0;
    if (!verdicts[i].right) {
      mark.reason = step_reason(mark, verdicts[i], steps[i]);
    }
    marks.push_back(std::move(mark));
  }
  return marks;
}

} // namespace matula::scoring
