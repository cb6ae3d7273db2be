#include "engine/learner/skills.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <map>

namespace matula::learner {

namespace {

constexpr double full_credit = 1000;

const scoring::TestRule* graded_test(const Answer& answer, const std::vector<scoring::TestRule>& tests) {
  if (!answer.intensity || !answer.grade) {
    return nullptr;
  }
  const auto test = std::find_if(tests.begin(), tests.end(),
                                 [&](const scoring::TestRule& one) { return one.key == answer.test; });
  const bool has_grade =
      test != tests.end() && *answer.grade >= 0 && *answer.grade < static_cast<int>(test->words.size());
  return has_grade ? &*test : nullptr;
}

std::optional<GradedFigures> figures_of(std::span<const Answer* const> answers,
                                        const std::vector<scoring::TestRule>& tests) {
  GradedFigures figures;
  std::map<std::string, double> constants; ///< What each word would have earned, by the word.
  for (const Answer* answer : answers) {
    const scoring::TestRule* test = graded_test(*answer, tests);
    if (test == nullptr) {
      continue;
    }
    const int words = static_cast<int>(test->words.size());
    const int shown = std::clamp(static_cast<int>(std::lround(*answer->intensity)), 0, words - 1);
    const auto worth = [&](int grade) {
      return scoring::score_intensity(*answer->intensity, static_cast<reading::Grade>(grade), test->ordinal);
    };
    ++figures.readings;
    figures.exact += *answer->grade == shown ? 1 : 0;
    figures.within_one += std::abs(*answer->grade - shown) <= 1 ? 1 : 0;
    figures.missed += worth(*answer->grade).missed_finding ? 1 : 0;
    figures.mean += worth(*answer->grade).per_mille;
    for (int grade = 0; grade < words; ++grade) {
      constants[test->words[static_cast<std::size_t>(grade)]] += worth(grade).per_mille;
    }
  }
  if (figures.readings == 0) {
    return std::nullopt;
  }
  const double n = figures.readings;
  figures.exact /= n;
  figures.within_one /= n;
  figures.mean /= n;
  for (const auto& [word, sum] : constants) {
    if (sum / n > figures.constant_mean) {
      figures.constant = word;
      figures.constant_mean = sum / n;
    }
  }
  figures.skill = figures.constant_mean < full_credit
                      ? (figures.mean - figures.constant_mean) / (full_credit - figures.constant_mean)
                      : 0;
  return figures;
}

statistics::Ability ability_of(std::span<const statistics::Answer> answers) {
  return statistics::estimate_ability(answers);
}

Trend trend_of(std::span<const statistics::Answer> answers, const Rules& rules) {
  const auto recent = static_cast<std::size_t>(rules.recent);
  Trend trend;
  if (answers.size() < recent + static_cast<std::size_t>(rules.before)) {
    trend.sentence = "Too few answers yet to tell a change.";
    return trend;
  }
  const auto now = ability_of(answers.last(recent));
  const auto then = ability_of(answers.first(answers.size() - recent));
  constexpr double ninety_percent = 1.6448536269514722;
  trend.change = now.mean - then.mean;
  trend.sd = std::hypot(now.sd, then.sd);
  const bool told = std::abs(trend.change) > ninety_percent * trend.sd;
  trend.sentence = fmt::format("{} in the last {} answers ({:+.1f}, give or take {:.1f}).",
                               !told              ? "No change that the answers can tell"
                               : trend.change > 0 ? "Better than before"
                                                  : "Worse than before",
                               recent, trend.change, trend.sd);
  return trend;
}

SkillProgress progress_in(const std::string& skill, std::vector<const Answer*> answers,
                          const std::vector<scoring::TestRule>& tests, const Rules& rules) {
  const auto latest = static_cast<std::size_t>(rules.latest_answers);
  if (answers.size() > latest) {
    answers.erase(answers.begin(), answers.end() - static_cast<std::ptrdiff_t>(latest));
  }
  SkillProgress progress;
  progress.skill = skill;
  std::vector<statistics::Answer> practised;
  for (const Answer* answer : answers) {
    progress.last_s = std::max(progress.last_s, answer->when_s);
    if (answer->from != From::Sitting) {
      practised.push_back({answer->difficulty, answer->credit >= rules.right_from});
      progress.right += practised.back().right ? 1 : 0;
    }
  }
  progress.answers = static_cast<int>(practised.size());
  progress.ability = ability_of(practised);
  progress.chance = statistics::chance_right(progress.ability.mean, 0);
  progress.mastered =
      progress.answers >= rules.mastered_from &&
      statistics::chance_right(progress.ability.mean - progress.ability.sd, 0) >= rules.mastered_chance;
  progress.graded = figures_of(answers, tests);
  progress.trend = trend_of(practised, rules);
  return progress;
}

} // namespace

std::vector<SkillProgress> skills_of(std::span<const Answer> answers,
                                     const std::vector<scoring::TestRule>& tests, const Rules& rules) {
  std::map<std::string, std::vector<const Answer*>> by_skill;
  for (const Answer& answer : answers) {
    by_skill[answer.skill].push_back(&answer);
  }
  std::vector<SkillProgress> all;
  for (auto& [skill, those] : by_skill) {
    all.push_back(progress_in(skill, std::move(those), tests, rules));
  }
  return all;
}

} // namespace matula::learner
