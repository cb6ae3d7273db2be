#include "engine/learner/memory.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <sstream>
#include <utility>

namespace matula::learner {

namespace {

/// Nothing for an unknown that is not one of its skill, such as a whole sitting.
std::vector<std::string> called_for(const Answer& answer) {
  std::istringstream parts(answer.unknown);
  std::string skill;
  std::string names;
  std::getline(parts, skill, '/');
  std::getline(parts, names, '/');
  std::istringstream each(skill == answer.skill ? names : "");
  std::vector<std::string> rules;
  for (std::string rule; std::getline(each, rule, '+');) {
    if (!rule.empty()) {
      rules.push_back(rule);
    }
  }
  return rules;
}

} // namespace

std::vector<RuleKept> rules_kept(std::span<const Answer> answers, const Rules& rules, std::int64_t now_s) {
  constexpr double day_s = 86400;
  std::map<std::pair<std::string, std::string>, RuleKept> kept;
  std::map<std::pair<std::string, std::string>, std::int64_t> last_s;
  for (const Answer& answer : answers) {
    if (std::find(rules.fading_skills.begin(), rules.fading_skills.end(), answer.skill) ==
        rules.fading_skills.end()) {
      continue;
    }
    const bool right = answer.credit >= rules.right_from;
    for (const std::string& rule : called_for(answer)) {
      const auto key = std::make_pair(answer.skill, rule);
      auto& one = kept.try_emplace(key, RuleKept{answer.skill, rule, 0, rules.memory.first_days, 0, 0, false,
                                                 rules.knowledge.first, false})
                      .first->second;
      ++one.met;
      one.half_life_days = statistics::half_life_after(one.half_life_days, right, rules.memory);
      one.known = statistics::known_after(one.known, right, rules.knowledge);
      last_s[key] = answer.when_s;
    }
  }
  std::vector<RuleKept> all;
  for (auto& [key, one] : kept) {
    const double elapsed_days = static_cast<double>(now_s - last_s[key]) / day_s;
    one.recall = statistics::recall_chance(one.half_life_days, elapsed_days);
    one.due_s =
        last_s[key] + std::llround(day_s * statistics::next_review(one.half_life_days, rules.due_below));
    one.due = now_s >= one.due_s;
    one.held = one.known >= rules.known_from;
    all.push_back(one);
  }
  std::stable_sort(all.begin(), all.end(),
                   [](const RuleKept& a, const RuleKept& b) { return a.recall < b.recall; });
  return all;
}

} // namespace matula::learner
