#include "engine/practice/choose.hpp"

#include "engine/learner/memory.hpp"
#include "engine/practice/difficulty.hpp"
#include "engine/practice/draws.hpp"
#include "engine/practice/store.hpp"
#include "engine/scoring/standards.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <limits>

namespace matula::practice {

namespace {

using learner::Answer;

struct Chooser {
  const Store& store;
  std::span<const Answer> answers;
  Draws draws;
  std::vector<learner::RuleKept> kept; ///< As they are remembered now.

  /// How many answers ago; the number of all where never.
  template <class Is> std::size_t ago(const Is& is) const {
    for (std::size_t i = 0; i < answers.size(); ++i) {
      if (is(answers[answers.size() - 1 - i])) {
        return i;
      }
    }
    return answers.size();
  }

  /// The least chance to recall a rule of the skill, 1 where none was met.
  double least_recall(Skill skill) const {
    double least = 1;
    for (const auto& one : kept) {
      least = one.skill == to_word(skill) ? std::min(least, one.recall) : least;
    }
    return least;
  }

  Skill choose_skill(const std::vector<Skill>& skills) const {
    if (skills.size() == 1) {
      return skills.front();
    }
    const std::string last = answers.empty() ? "" : answers.back().skill;
    Skill best = skills.front();
    double best_rank = -1;
    for (const Skill skill : skills) {
      const std::string word = to_word(skill);
      if (word == last) {
        continue;
      }
      const double recall = least_recall(skill);
      const bool due = recall < store.learning.due_below;
      const auto since = static_cast<double>(ago([&](const Answer& answer) { return answer.skill == word; }));
      // Faded rules go first unless they were just met; then what was met longest ago; chance parts the rest.
      const bool rested = since >= static_cast<double>(skills.size()) / 2;
      const double rank =
          (due && rested ? 1e6 * (2 - recall) : 0) + since + draws.even("skill " + word) * 0.9;
      if (rank > best_rank) {
        best_rank = rank;
        best = skill;
      }
    }
    return best;
  }

  double wanted(Skill skill) const {
    const auto ability = ability_of(answers, skill, store.rules.choice.right_from);
    return statistics::difficulty_for(ability.mean, store.rules.choice.chance_right);
  }

  Unknown tube(Skill skill, std::uint64_t seed) const {
    const auto tests = store.rules.tests_of(skill);
    const auto rank = [&](const std::string& test) {
      return ago([&](const Answer& answer) { return answer.test == test; });
    };
    const std::string test = *std::max_element(
        tests.begin(), tests.end(), [&](const auto& a, const auto& b) { return rank(a) < rank(b); });
    const auto& rule = store.standards->rules.find_test(test)->ordinal;
    const double soft = soft_limit(rule);
    const double from_line = std::clamp(distance_for(wanted(skill), store.rules.difficulty), soft, 0.5);
    const auto& urines = store.rules.urines;
    constexpr double usual = 0.7;
    const auto& urine =
        draws.even("usual urine") < usual ? urines.front() : urines[draws.pick("urine", urines.size())];
    return tube_at(store, test, urine.key, grade_for(test, rule.grades), from_line, seed);
  }

  /// Not the grade of that test's last tube.
  std::size_t grade_for(const std::string& test, std::size_t grades) const {
    const auto last = ago([&](const Answer& answer) { return answer.test == test && answer.intensity; });
    const auto picked = draws.pick("grade", grades);
    if (last == answers.size()) {
      return picked;
    }
    const double intensity = *answers[answers.size() - 1 - last].intensity;
    const auto before =
        static_cast<std::size_t>(std::clamp(std::lround(intensity), 0L, static_cast<long>(grades) - 1));
    return picked == before ? (picked + 1 + draws.pick("other grade", grades - 1)) % grades : picked;
  }

  /// Distance from a line inside which both words count as right: nearer than that it is no harder.
  double soft_limit(const scoring::OrdinalRule& rule) const {
    constexpr double step = 0.005;
    constexpr double on_line = 0.5; // Between the first two words; all inner lines are alike.
    double distance = step;
    while (distance < 0.25 &&
           distance_to_line(on_line + distance, rule, store.rules.choice.right_from) > 0.5) {
      distance += step;
    }
    return distance + 2 * step;
  }

  Unknown jar(std::uint64_t seed) const {
    const auto& waters = store.rules.floats.temperature_c;
    auto water = waters.begin();
    std::advance(water, draws.pick("water", waters.size()));
    constexpr double soft = 0.11; // Divisions; nearer to half way both marks are right.
    const double from_half =
        std::clamp(distance_for(wanted(Skill::Meniscus), store.rules.difficulty), soft, 0.5);
    return float_at(store, water->first, from_half, seed);
  }

  /// The one of the sets of rules that calls for what has faded most, or else is as hard as wanted; rules
  /// never met count as a little harder than they are known to be easy, so that all come in their turn.
  Unknown of_rules(Skill skill, std::uint64_t seed) const {
    const bool sums = skill == Skill::Corrections;
    std::vector<std::pair<std::string, double>> sets;
    if (sums) {
      for (const std::string& set : all_step_sets()) {
        sets.emplace_back(set, step_set_difficulty(set, store.rules.difficulty));
      }
    } else {
      sets.assign(store.rules.difficulty.delivery.begin(), store.rules.difficulty.delivery.end());
    }
    const double hard = wanted(skill);
    std::string best;
    double best_rank = -std::numeric_limits<double>::infinity();
    for (const auto& [what, difficulty] : sets) {
      const Unknown unknown{skill, what, "plain", 0, seed};
      constexpr double shuffle = 0.6; // Logits: sets about equally hard take turns.
      const double there =
          sums ? sum_difficulty(make_sum(store, unknown), store.rules.difficulty) : difficulty;
      const double rank =
          faded(unknown) - std::abs(there - hard) + shuffle * draws.even("set " + what) - lately(unknown);
      if (rank > best_rank) {
        best_rank = rank;
        best = what;
      }
    }
    return {skill, best, "plain", 0, seed};
  }

  /// How much its rules ask to be met again, in logits.
  double faded(const Unknown& unknown) const {
    constexpr double pull = 8;
    double most = 0;
    const auto rules = rules_of(unknown);
    for (const auto& one : kept) {
      const bool called = one.skill == to_word(unknown.skill) &&
                          std::find(rules.begin(), rules.end(), one.rule) != rules.end();
      most = called ? std::max(most, store.learning.due_below - one.recall) : most;
    }
    return pull * most;
  }

  /// What came within the last answers to its skill stands back.
  double lately(const Unknown& unknown) const {
    constexpr double push = 3;
    constexpr double wears_off = 6;
    std::size_t since = 0;
    for (std::size_t i = answers.size(); i-- > 0;) {
      if (answers[i].skill != to_word(unknown.skill)) {
        continue;
      }
      const auto before = unknown_from_text(answers[i].unknown);
      if (before && before->what == unknown.what) {
        return push * std::max(0.0, 1 - static_cast<double>(since) / wears_off);
      }
      ++since;
    }
    return 0;
  }

  Unknown of(Skill skill, std::uint64_t seed) const {
    return has_tubes(skill)           ? tube(skill, seed)
           : skill == Skill::Meniscus ? jar(seed)
                                      : of_rules(skill, seed);
  }

  bool came_lately(const Unknown& unknown) const {
    const std::string text = to_text(unknown);
    return ago([&](const Answer& answer) { return answer.unknown == text; }) <
           std::min(answers.size(), static_cast<std::size_t>(store.rules.choice.unlike_the_last));
  }
};

} // namespace

statistics::Ability ability_of(std::span<const Answer> answers, Skill skill, int right_from) {
  std::vector<statistics::Answer> own;
  for (const Answer& answer : answers) {
    if (answer.skill == to_word(skill) && answer.from != learner::From::Sitting) {
      own.push_back({answer.difficulty, answer.credit >= right_from});
    }
  }
  return statistics::estimate_ability(own);
}

Unknown next_unknown(const Store& store, std::span<const Answer> answers, const std::vector<Skill>& skills,
                     std::int64_t now_s, std::uint64_t seed) {
  constexpr int most_tries = 20;
  Unknown unknown;
  for (int attempt = 0; attempt < most_tries; ++attempt) {
    const Draws draws(seed + static_cast<std::uint64_t>(attempt) * 0x9e3779b97f4a7c15ULL);
    const Chooser chooser{store, answers, draws, learner::rules_kept(answers, store.learning, now_s)};
    unknown = chooser.of(chooser.choose_skill(skills), draws.seed("unknown"));
    if (!chooser.came_lately(unknown)) {
      break;
    }
  }
  return unknown;
}

} // namespace matula::practice
