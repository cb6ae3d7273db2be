#include "engine/desk/make_page.hpp"

#include "engine/practice/store.hpp"
#include "engine/scoring/standards.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <cmath>

namespace matula::desk {

namespace {

std::string say_state(const learner::SkillProgress& skill, const learner::Rules& rules) {
  if (skill.answers < rules.mastered_from) {
    return fmt::format("Too few answers in drills and quizzes to say how far you are; {} would do.",
                       rules.mastered_from);
  }
  const std::string share =
      fmt::format("about {} in 10 unknowns of middling difficulty", std::lround(10 * skill.chance));
  return skill.mastered ? "Mastered: you get " + share + ", and that is sure."
                        : "Not yet mastered for sure: you get " + share + ".";
}

std::string say_graded(const learner::GradedFigures& graded) {
  const auto percent = [](double share) { return std::lround(100 * share); };
  std::string words = fmt::format("{} tubes: {} % exact, {} % within one grade", graded.readings,
                                  percent(graded.exact), percent(graded.within_one));
  if (graded.missed > 0) {
    words += graded.missed == 1 ? ", one finding missed" : fmt::format(", {} findings missed", graded.missed);
  }
  return words +
         fmt::format(". Whoever writes \"{}\" every time earns something too; of the rest you earn {} %.",
                     graded.constant, percent(std::max(graded.skill, 0.0)));
}

std::string say_due(const std::string& skill, const std::vector<learner::RuleKept>& kept) {
  const auto due =
      std::count_if(kept.begin(), kept.end(), [&](const auto& one) { return one.skill == skill && one.due; });
  return due == 0 ? "" : due == 1 ? "One rule is due again." : fmt::format("{} rules are due again.", due);
}

SkillProgress shown(const learner::Progress& progress, const std::string& key, const std::string& title,
                    const learner::Rules& rules) {
  SkillProgress one;
  one.title = title;
  const auto found = std::find_if(progress.skills.begin(), progress.skills.end(),
                                  [&](const auto& skill) { return skill.skill == key; });
  if (found == progress.skills.end()) {
    one.state = "Nothing answered yet.";
    return one;
  }
  one.answers = found->answers;
  one.state = say_state(*found, rules);
  one.trend = found->trend.sentence;
  one.graded = found->graded ? say_graded(*found->graded) : "";
  one.due = say_due(key, progress.rules);
  return one;
}

/// A test whose tubes can stand for a group, and the skill it belongs to.
const practice::Practised* test_for(const practice::Store& store, const std::string& group) {
  const std::string wanted = group == "clouds" ? "ssa" : group == learner::copper_group ? "benedict" : group;
  return store.rules.find_test(wanted);
}

OwnLines shown(const practice::Store& store, const learner::GroupLines& group) {
  OwnLines one;
  one.key = group.key;
  one.title = group.title;
  one.title.front() = static_cast<char>(std::toupper(static_cast<unsigned char>(one.title.front())));
  one.words = group.words;
  one.readings = group.readings;
  if (const auto* test = test_for(store, group.key)) {
    one.test = test->key;
    one.card = test->skill == practice::Skill::Copper ? appearance::Card::White : appearance::Card::Black;
  }
  double largest = 0;
  for (const learner::OwnLine& line : group.lines) {
    one.lines.push_back({line.reference, line.own.value, line.own.low, line.own.high});
    const double off = std::abs(line.own.value - line.reference);
    if (!line.sentence.empty() && off > largest) {
      largest = off;
      one.disputed = one.lines.size() - 1;
    }
    if (!line.sentence.empty()) {
      one.sentences.push_back(line.sentence);
    }
  }
  one.off = !group.sentence.empty();
  if (one.off) {
    one.sentences.insert(one.sentences.begin(), group.sentence);
  }
  if (one.sentences.empty()) {
    one.sentences.emplace_back("Your readings show no difference from a practised reader.");
  }
  return one;
}

} // namespace

ProgressPage make_page(const practice::Store& store, const std::vector<learner::Answer>& answers,
                       std::int64_t now_s) {
  const learner::Rules& rules = store.learning;
  const auto progress = learner::progress_of(answers, store.standards->rules.tests, rules, now_s);
  ProgressPage page;
  page.tomorrow = progress.tomorrow;
  for (const practice::Skill skill : practice::all_skills) {
    page.skills.push_back(shown(progress, practice::to_word(skill), practice::title_of(skill), rules));
  }
  for (const auto& test : store.standards->rules.tests) {
    const bool done = std::any_of(progress.skills.begin(), progress.skills.end(),
                                  [&](const auto& skill) { return skill.skill == test.key; });
    // Tubes of cases that no drill holds; one test has the name of a skill.
    if (done && !practice::skill_from_word(test.key)) {
      page.skills.push_back(shown(progress, test.key, test.title, rules));
    }
  }
  for (const learner::GroupLines& group : progress.lines) {
    if (group.shift) {
      page.lines.push_back(shown(store, group));
    }
  }
  std::stable_sort(page.lines.begin(), page.lines.end(),
                   [](const OwnLines& a, const OwnLines& b) { return a.rank() > b.rank(); });
  for (const learner::Swap& swap : progress.swaps) {
    if (!swap.sentence.empty()) {
      page.colours.push_back(swap.sentence);
    }
  }
  return page;
}

} // namespace matula::desk
