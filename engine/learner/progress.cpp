#include "engine/learner/progress.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <map>

namespace matula::learner {

namespace {

/// A sentence, and the credit it explains the loss of, per mille summed over answers and times the chance
/// that it is so.
struct Advice {
  double cost = 0;
  std::string sentence;
};

int lost(const Answer& answer) {
  constexpr int full = 1000;
  return full - answer.credit;
}

void about_missed(const std::vector<Group>& groups, const std::vector<scoring::TestRule>& tests,
                  const Rules& rules, std::vector<Advice>& all) {
  int missed = 0;
  double cost = 0;
  for (const Group& group : groups) {
    for (const Answer* answer : group.answers) {
      const auto test = std::find_if(tests.begin(), tests.end(),
                                     [&](const scoring::TestRule& one) { return one.key == answer->test; });
      const auto worth = scoring::score_intensity(*answer->intensity,
                                                  static_cast<reading::Grade>(*answer->grade), test->ordinal);
      missed += worth.missed_finding ? 1 : 0;
      cost += worth.missed_finding ? lost(*answer) : 0;
    }
  }
  if (missed >= rules.missed_from) {
    all.push_back(
        {cost, fmt::format("{} tubes with a finding a doctor must hear of were read as negative. Before "
                           "you write it, hold the tube once more before the card its test names.",
                           missed)});
  }
}

/// Credit lost by readings that were off the way the learner's lines are.
double lost_that_way(const Group& group, bool too_much, double from, double to) {
  double cost = 0;
  for (const Answer* answer : group.answers) {
    const double off = *answer->grade - *answer->intensity;
    if ((off > 0) == too_much && *answer->intensity > from && *answer->intensity < to) {
      cost += lost(*answer);
    }
  }
  return cost;
}

void about_lines(const std::vector<Group>& groups, const std::vector<GroupLines>& lines,
                 std::vector<Advice>& all) {
  constexpr double everywhere = 1000;
  for (std::size_t g = 0; g < groups.size(); ++g) {
    const GroupLines& own = lines[g];
    if (!own.sentence.empty()) {
      const bool too_much = own.shift->value < 0;
      all.push_back({own.shift_chance * lost_that_way(groups[g], too_much, -everywhere, everywhere),
                     own.sentence + (too_much ? " When in doubt between two words, write the lower one."
                                              : " When in doubt between two words, write the higher one.")});
      continue; // Its single lines would say the same.
    }
    for (const OwnLine& line : own.lines) {
      if (!line.sentence.empty()) {
        all.push_back({line.chance * lost_that_way(groups[g], line.own.value < line.reference,
                                                   line.reference - 1, line.reference + 1),
                       line.sentence});
      }
    }
  }
}

void about_swaps(const std::vector<Group>& groups, const std::vector<Swap>& swaps, std::vector<Advice>& all) {
  for (std::size_t k = 0; k < swaps.size(); ++k) {
    if (swaps[k].sentence.empty()) {
      continue;
    }
    const auto copper = std::find_if(groups.begin(), groups.end(),
                                     [](const Group& group) { return group.key == copper_group; });
    const double line = statistics::reference_lines[k];
    all.push_back(
        {lost_that_way(*copper, true, line - 1, line + 1) + lost_that_way(*copper, false, line - 1, line + 1),
         swaps[k].sentence});
  }
}

void about_faults(std::span<const Answer> answers, const Rules& rules, std::vector<Advice>& all) {
  const auto latest = std::min(answers.size(), static_cast<std::size_t>(rules.latest_answers));
  struct Times {
    int times = 0;
    double cost = 0;
  };
  std::map<std::string, Times> faults;
  for (const Answer& answer : answers.last(latest)) {
    if (!answer.fault.empty() && lost(answer) > 0) {
      ++faults[answer.fault].times;
      faults[answer.fault].cost += lost(answer);
    }
  }
  for (const auto& [fault, one] : faults) {
    if (one.times >= rules.fault_from) {
      std::string words = fault;
      std::replace(words.begin(), words.end(), '_', ' ');
      all.push_back(
          {one.cost, fmt::format("{} of your last {} answers lost marks through the same thing: {}.",
                                 one.times, latest, words)});
    }
  }
}

void about_due(const std::vector<RuleKept>& kept, const Rules& rules, std::vector<Advice>& all) {
  constexpr std::size_t most_named = 4;
  Advice advice;
  std::string names;
  std::size_t due = 0;
  for (const RuleKept& rule : kept) {
    if (rule.due) {
      advice.cost += (1 - rule.recall) * rules.due_costs;
      if (++due <= most_named) {
        std::string words = rule.rule;
        std::replace(words.begin(), words.end(), '_', ' ');
        names += (names.empty() ? "" : ", ") + words;
      }
    }
  }
  if (due > 0) {
    advice.sentence =
        fmt::format("{} due again: {}{}.", due == 1 ? "A rule is" : std::to_string(due) + " rules are", names,
                    due > most_named ? " and more" : "");
    all.push_back(advice);
  }
}

std::string about_weakest(const std::vector<SkillProgress>& skills) {
  const auto weakest =
      std::min_element(skills.begin(), skills.end(), [](const SkillProgress& a, const SkillProgress& b) {
        return a.ability.mean + a.ability.sd < b.ability.mean + b.ability.sd;
      });
  if (weakest == skills.end()) {
    return "Nothing has been answered yet.";
  }
  const bool all_held =
      std::all_of(skills.begin(), skills.end(), [](const SkillProgress& one) { return one.mastered; });
  return all_held
             ? "Nothing stands out, and every skill you have practised is held: try one you have not."
             : fmt::format("Nothing stands out yet. Go on practising; {} has most to gain.", weakest->skill);
}

} // namespace

Progress progress_of(std::span<const Answer> answers, const std::vector<scoring::TestRule>& tests,
                     const Rules& rules, std::int64_t now_s) {
  const auto groups = groups_of(answers, tests, rules);
  Progress progress;
  progress.skills = skills_of(answers, tests, rules);
  progress.rules = rules_kept(answers, rules, now_s);
  progress.lines = own_lines(groups, rules);
  progress.swaps = swapped_colours(groups, rules);
  std::vector<Advice> all;
  about_missed(groups, tests, rules, all);
  about_lines(groups, progress.lines, all);
  about_swaps(groups, progress.swaps, all);
  about_faults(answers, rules, all);
  about_due(progress.rules, rules, all);
  std::stable_sort(all.begin(), all.end(), [](const Advice& a, const Advice& b) { return a.cost > b.cost; });
  for (const Advice& advice : all) {
    if (progress.tomorrow.size() < static_cast<std::size_t>(rules.most_sentences)) {
      progress.tomorrow.push_back(advice.sentence);
    }
  }
  if (progress.tomorrow.empty()) {
    progress.tomorrow.push_back(about_weakest(progress.skills));
  }
  return progress;
}

} // namespace matula::learner
