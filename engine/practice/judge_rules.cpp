#include "engine/assets/world.hpp"
#include "engine/practice/judging.hpp"
#include "engine/practice/store.hpp"
#include "engine/reception/judge.hpp"
#include "engine/scenario/scenario.hpp"
#include "engine/scoring/explain.hpp"
#include "engine/scoring/numeric.hpp"
#include "engine/scoring/standards.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace matula::practice {

namespace {

struct Line {
  const char* item;
  const char* label;
};
constexpr std::array<Line, 5> lines_of_sum{{{"sg.step.zero", "Correction for the float's own error"},
                                            {"sg.step.temperature", "Correction for temperature"},
                                            {"sg.step.protein", "Correction for protein"},
                                            {"sg.step.glucose", "Correction for glucose"},
                                            {"sg.corrected", "Corrected specific gravity"}}};

std::string why(const scoring::StepVerdict& verdict, const scoring::Step& step, const std::string& entered) {
  const std::string slip = verdict.slip.empty() ? "" : ": " + verdict.slip;
  if (!verdict.written) {
    return "No line was written for it" + (slip.empty() ? ", and no later line holds it" : slip) + ".";
  }
  return fmt::format("From your own line {} the step leads to {} ({}). You wrote {}{}.",
                     scoring::say_gravity(verdict.from), scoring::say_gravity(verdict.expected_line),
                     scoring::say_correction(step.expected), entered, slip);
}

std::string joined(const std::vector<std::string>& words) {
  std::string all;
  for (const std::string& word : words) {
    all += (all.empty() ? "" : ", ") + (word.empty() ? "-" : word);
  }
  return all;
}

/// Marks of the counter as a sitting has them, for the one verdict and the one reason that were given.
scoring::Report counter_report(const Store& store, const HandedIn& handed, const std::string& verdict,
                               const std::string& reason) {
  scenario::Scenario scenario;
  scenario.key = "counter";
  scenario.specimen = store.plain;
  scenario.collection = handed.delivery;
  std::vector<sitting::Event> log;
  if (!verdict.empty()) {
    log.push_back({0, sitting::Record{"reception", verdict}});
  }
  if (!reason.empty() && reason != no_fault) {
    log.push_back({0, sitting::Record{"reception.fault." + reason, "yes"}});
  }
  log.push_back({0, sitting::Finish{}});
  return scoring::score(*store.world, *store.standards, scenario, log);
}

/// "refuse: Label on the lid only"
std::string in_words(const HandedIn& handed, const std::string& verdict, const std::string& reason) {
  for (const auto& [key, wording] : handed.reasons) {
    if (key == reason) {
      return verdict + ": " + wording;
    }
  }
  return verdict;
}

/// Whether a mark is about the verdict, the planted fault, the reason given, or whose specimen it is.
bool belongs(const scoring::Mark& mark, const HandedIn& handed, const std::string& reason) {
  return mark.item == "reception" || mark.item == "reception.fault" || mark.item == "safety.identity" ||
         mark.item == "reception.fault." + handed.right_reason || mark.item == "reception.fault." + reason;
}

} // namespace

Judged judge_sum(const Store& store, const Sum& sum, const std::array<std::string, 5>& lines) {
  const auto line = [&](std::size_t i) { return scoring::number_from_text(lines[i]); };
  const auto steps = scoring::gravity_steps(sum.basis, {line(0), line(1), line(2), line(3), line(4)});
  const auto verdicts = scoring::mark_chain(sum.reading, steps);
  const bool any =
      std::any_of(steps.begin(), steps.end(), [](const auto& step) { return step.entered.has_value(); });
  const auto right = right_lines(sum);
  const auto& shares = store.standards->rules.gravity.shares;
  const auto possible =
      scoring::split_marks(scenario::Marking{}.gravity_weight, {shares.begin() + 1, shares.end()});
  Judged judged;
  judged.written = joined({lines.begin(), lines.end()});
  std::vector<std::string> expected;
  for (std::size_t i = 0; i < lines_of_sum.size(); ++i) {
    scoring::Mark mark;
    mark.ledger = scoring::Ledger::Arithmetic;
    mark.item = lines_of_sum[i].item;
    mark.label = lines_of_sum[i].label;
    mark.possible = possible[i];
    mark.entered = lines[i];
    mark.expected = scoring::say_gravity(verdicts[i].expected_line);
    mark.earned = any && verdicts[i].right ? mark.possible : 0;
    if (mark.earned < mark.possible) {
      mark.reason = any ? why(verdicts[i], steps[i], lines[i]) : "No line was written.";
      judged.fault = judged.fault.empty() ? verdicts[i].slip : judged.fault;
      judged.words.push_back(mark.label + ". " + mark.reason);
    }
    expected.push_back(scoring::say_gravity(right[i]));
    judged.marks.push_back(std::move(mark));
  }
  judged.expected = joined(expected);
  judged.words.insert(judged.words.begin(), "By the written rule the lines are " + judged.expected + ".");
  add_up(judged, store.rules.choice.right_from);
  return judged;
}

Judged judge_delivery(const Store& store, const HandedIn& handed, const std::string& verdict,
                      const std::string& reason) {
  const auto report = counter_report(store, handed, verdict, reason);
  Judged judged;
  judged.written = in_words(handed, verdict, reason);
  judged.expected = in_words(handed, handed.verdict, handed.right_reason);
  judged.safety_stop = report.safety_stop;
  for (const auto& mark : report.marks) {
    if (mark.possible > 0 && belongs(mark, handed, reason)) {
      judged.marks.push_back(mark);
    }
  }
  const auto judgement = reception::judge(handed.delivery, *store.book);
  for (const auto& broken : judgement.broken) {
    if (broken.verdict != reception::Verdict::Note) {
      judged.words.push_back(broken.rule->why);
    }
  }
  if (judged.words.empty()) {
    judged.words.emplace_back("Form, label and container are in order.");
  }
  if (handed.verdict == "qualify" && !handed.delivery.replaceable) {
    judged.words.emplace_back(
        "It cannot be had again: it is taken in, the report says what is wrong with it, and the "
        "requester is told.");
  }
  if (judged.safety_stop) {
    judged.words.emplace_back("A specimen was taken in though nobody can say whose it is.");
  }
  add_up(judged, store.rules.choice.right_from);
  judged.fault = judged.right ? "" : handed.right_reason;
  return judged;
}

} // namespace matula::practice
