#include "engine/desk/make_page.hpp"

#include "engine/assets/world.hpp"
#include "engine/learner/confusion.hpp"
#include "engine/practice/choose.hpp"
#include "engine/practice/memory.hpp"
#include "engine/practice/store.hpp"
#include "engine/practice/tube.hpp"
#include "engine/scoring/standards.hpp"
#include "engine/statistics/boundaries.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace matula::desk {

namespace {

constexpr int least_for_shift = 10; // A proposal of this program: fewer say next to nothing.
constexpr int least_for_lines = 40;
constexpr double ninety_percent = 1.645; // Standard errors on either side.
constexpr int least_for_state = 8;
constexpr double mastered_from = 0.75; // Chance to be right at a middling unknown.
constexpr int reportable = 2;          // 1+

std::vector<statistics::GradedReading> readings_of(const std::vector<learner::Answer>& answers,
                                                   const std::string& test) {
  std::vector<statistics::GradedReading> readings;
  for (const auto& answer : answers) {
    if (answer.test == test && answer.intensity && answer.grade) {
      readings.push_back({*answer.intensity, *answer.grade});
    }
  }
  return readings;
}

std::string say_line(const OwnLines& group, std::size_t line) {
  const bool sooner = group.own[line] < group.reference[line];
  const std::string& below = group.words[line];
  const std::string& above = group.words[line + 1];
  return sooner ? fmt::format("{}: you call a tube {} that a practised reader still calls {}. Yours begins "
                              "{:.1f} grades "
                              "sooner.",
                              group.title, above, below, group.reference[line] - group.own[line])
                : fmt::format("{}: you still call a tube {} that a practised reader already calls {}. Yours "
                              "begins {:.1f} "
                              "grades later.",
                              group.title, below, above, group.own[line] - group.reference[line]);
}

void speak(OwnLines& group, const statistics::Boundaries& fitted,
           const std::vector<statistics::GradedReading>& readings) {
  const statistics::SpeakingRule rule;
  double largest = 0;
  for (std::size_t line = 0; group.shows_lines && line < OwnLines::lines; ++line) {
    if (!statistics::may_speak_of_line(fitted, line, readings, rule)) {
      continue;
    }
    group.sentences.push_back(say_line(group, line));
    const double off = std::abs(group.own[line] - group.reference[line]);
    if (off > largest) {
      largest = off;
      group.disputed = line;
    }
  }
  const double chance =
      statistics::chance_of_shift(fitted.shift, fitted.shift_se * rule.widening, rule.least_shift);
  if (group.sentences.empty() && chance > rule.least_chance) {
    group.off = true;
    group.sentences.push_back(fmt::format("{}: on the whole you read {:.1f} grades too {}.", group.title,
                                          std::abs(fitted.shift), fitted.shift < 0 ? "high" : "low"));
  }
  if (group.sentences.empty()) {
    group.sentences.push_back("Your readings show no difference from a practised reader.");
  }
}

std::optional<OwnLines> lines_of(const practice::Store& store, const practice::Practised& test,
                                 const std::vector<learner::Answer>& answers) {
  const auto readings = readings_of(answers, test.key);
  const auto words = practice::words_of(store, test.key);
  if (readings.size() < least_for_shift || words.size() != statistics::grades) {
    return std::nullopt;
  }
  const auto fitted = statistics::fit_boundaries(readings);
  if (!fitted) {
    return std::nullopt;
  }
  OwnLines group;
  group.key = group.test = test.key;
  group.title = store.standards->rules.find_test(test.key)->title;
  group.card = test.skill == practice::Skill::Copper ? appearance::Card::White : appearance::Card::Black;
  group.words = words;
  group.readings = static_cast<int>(readings.size());
  const double widening = statistics::SpeakingRule().widening;
  for (std::size_t i = 0; i < OwnLines::lines; ++i) {
    group.reference[i] = statistics::reference_lines[i];
    group.own[i] = fitted->line[i];
    group.within[i] = ninety_percent * widening * fitted->line_se[i];
  }
  group.shows_lines = group.readings >= least_for_lines;
  speak(group, *fitted, readings);
  return group;
}

std::vector<learner::Answer> of_skill(const std::vector<learner::Answer>& answers, const std::string& skill) {
  std::vector<learner::Answer> own;
  std::copy_if(answers.begin(), answers.end(), std::back_inserter(own),
               [&](const auto& one) { return one.skill == skill; });
  return own;
}

std::string say_state(const statistics::Ability& ability, std::size_t answers) {
  if (answers < least_for_state) {
    return fmt::format("Too few answers to say how far you are; {} would do.", least_for_state);
  }
  const double sure = statistics::chance_right(ability.mean - ninety_percent * ability.sd, 0);
  const double likely = statistics::chance_right(ability.mean, 0);
  const std::string share =
      fmt::format("about {} in 10 unknowns of middling difficulty", std::lround(10 * likely));
  return sure > mastered_from     ? "Mastered: you get " + share + ", and that is sure."
         : likely > mastered_from ? "Nearly there: you get " + share + "; a few more answers make it sure."
                                  : "To practise: you get " + share + ".";
}

/// Whether the later half of the answers is better than the earlier, as far as can be said.
std::string say_trend(const std::vector<learner::Answer>& answers, practice::Skill skill, int right_from) {
  if (answers.size() < 2 * least_for_state) {
    return "";
  }
  const auto middle = answers.begin() + static_cast<std::ptrdiff_t>(answers.size() / 2);
  const auto early = practice::ability_of(std::vector(answers.begin(), middle), skill, right_from);
  const auto late = practice::ability_of(std::vector(middle, answers.end()), skill, right_from);
  const double gain = late.mean - early.mean;
  if (std::abs(gain) < ninety_percent * std::hypot(early.sd, late.sd)) {
    return "Your answers show no change yet.";
  }
  return gain > 0 ? "Better than in the first half of your answers, beyond chance."
                  : "Worse than in the first half of your answers, beyond chance.";
}

int shown_of(const learner::Answer& answer) {
  return static_cast<int>(std::lround(*answer.intensity));
}

/// Read as negative where a finding was to be reported.
int count_missed(const std::vector<learner::Answer>& answers) {
  return static_cast<int>(std::count_if(answers.begin(), answers.end(), [](const auto& one) {
    return one.intensity && one.grade == 0 && shown_of(one) >= reportable;
  }));
}

std::string say_exact(const std::vector<learner::Answer>& answers) {
  int graded = 0;
  int exact = 0;
  int near = 0;
  for (const auto& one : answers) {
    if (!one.intensity || !one.grade) {
      continue;
    }
    const int shown = shown_of(one);
    ++graded;
    exact += *one.grade == shown ? 1 : 0;
    near += std::abs(*one.grade - shown) <= 1 ? 1 : 0;
  }
  const int missed = count_missed(answers);
  return graded == 0 ? ""
                     : fmt::format("{} of {} tubes exact, {} within one grade{}.", exact, graded, near,
                                   missed == 0   ? ""
                                   : missed == 1 ? ", one finding missed"
                                                 : fmt::format(", {} findings missed", missed));
}

SkillProgress progress_of(const practice::Store& store, const std::vector<learner::Answer>& all,
                          practice::Skill skill, std::int64_t now_s) {
  const auto& rules = store.rules;
  const auto answers = of_skill(all, practice::to_word(skill));
  SkillProgress progress;
  progress.title = practice::title_of(skill);
  progress.answers = static_cast<int>(answers.size());
  const auto ability = practice::ability_of(answers, skill, rules.choice.right_from);
  progress.ability = ability.mean;
  progress.ability_sd = ability.sd;
  progress.state = say_state(ability, answers.size());
  progress.trend = say_trend(answers, skill, rules.choice.right_from);
  progress.exact = say_exact(answers);
  progress.missed = count_missed(answers);
  int faded = 0;
  for (const auto& [fact, one] : practice::remembered(answers, rules.memory, rules.choice.right_from)) {
    faded += one.recall(now_s) < rules.memory.due_below ? 1 : 0;
  }
  progress.due = faded == 0   ? ""
                 : faded == 1 ? "One rule is due again."
                              : fmt::format("{} rules are due again.", faded);
  return progress;
}

/// Which copper colours are taken for each other more often than unsteadiness explains.
std::vector<std::string> swapped_colours(const practice::Store& store,
                                         const std::vector<learner::Answer>& answers) {
  static const auto rules = learner::load_rules(assets::folder());
  std::vector<std::string> words;
  if (rules) {
    const auto groups = learner::groups_of(answers, store.standards->rules.tests, *rules);
    for (const learner::Swap& swap : learner::swapped_colours(groups, *rules)) {
      if (!swap.sentence.empty()) {
        words.push_back(swap.sentence);
      }
    }
  }
  return words;
}

/// At most three, the surest first: where the eye differs, what was missed, what has faded, what is weakest.
std::vector<std::string> what_to_change(const ProgressPage& page) {
  constexpr std::size_t most = 3;
  std::vector<std::string> words;
  for (const OwnLines& group : page.lines) {
    if (group.disputed || group.off) {
      words.insert(words.end(), group.sentences.begin(), group.sentences.end());
    }
  }
  for (const SkillProgress& skill : page.skills) {
    if (skill.missed > 0) {
      words.push_back(fmt::format(
          "{}: {} written as negative that had to be reported. Look against black and against print "
          "before you write negative.",
          skill.title, skill.missed == 1 ? "one tube was" : fmt::format("{} tubes were", skill.missed)));
    }
  }
  for (const SkillProgress& skill : page.skills) {
    if (!skill.due.empty()) {
      words.push_back(skill.title + ": " + skill.due);
    }
  }
  const SkillProgress* weakest = nullptr;
  for (const SkillProgress& skill : page.skills) {
    const bool known = skill.answers >= least_for_state && skill.ability < 0;
    weakest = known && (weakest == nullptr || skill.ability < weakest->ability) ? &skill : weakest;
  }
  if (weakest != nullptr) {
    words.push_back(
        weakest->title +
        ": the skill with most to gain. Ten minutes of practice a day do more than an hour once.");
  }
  words.resize(std::min(words.size(), most));
  return words;
}

} // namespace

ProgressPage make_page(const practice::Store& store, const std::vector<learner::Answer>& answers,
                       std::int64_t now_s) {
  ProgressPage page;
  for (const practice::Skill skill : practice::all_skills) {
    page.skills.push_back(progress_of(store, answers, skill, now_s));
  }
  for (const practice::Practised& test : store.rules.tests) {
    if (auto lines = lines_of(store, test, answers)) {
      page.lines.push_back(std::move(*lines));
    }
  }
  std::stable_sort(page.lines.begin(), page.lines.end(),
                   [](const OwnLines& a, const OwnLines& b) { return a.rank() > b.rank(); });
  page.colours = swapped_colours(store, answers);
  page.tomorrow = what_to_change(page);
  return page;
}

} // namespace matula::desk
