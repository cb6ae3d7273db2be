#include "engine/learner/groups.hpp"

#include <algorithm>

namespace matula::learner {

namespace {

struct Name {
  std::string key;
  std::string title;
};

Name name_of(const procedure::Procedure& test) {
  switch (test.scale.kind) {
  case reading::ScaleKind::HeatCloud:
  case reading::ScaleKind::AcidCloud:
    return {"clouds", "clouds of protein"};
  case reading::ScaleKind::CopperColour:
    return {copper_group, "the colours of reduced copper"};
  default:
    return {test.key, "the " + test.label};
  }
}

bool is_graded(const procedure::Procedure& test) {
  return test.result == procedure::Result::Word && test.words.size() >= 2 &&
         test.words.size() <= statistics::grades;
}

void keep_latest(Group& group, std::size_t most) {
  if (group.answers.size() > most) {
    const auto surplus = static_cast<std::ptrdiff_t>(group.answers.size() - most);
    group.answers.erase(group.answers.begin(), group.answers.begin() + surplus);
  }
  for (const Answer* answer : group.answers) {
    group.readings.push_back({*answer->intensity, *answer->grade});
  }
}

} // namespace

std::vector<Group> groups_of(std::span<const Answer> answers, const std::vector<scoring::TestRule>& tests,
                             const Rules& rules) {
  std::vector<Group> groups;
  for (const scoring::TestRule& test : tests) {
    if (!is_graded(test)) {
      continue;
    }
    const Name name = name_of(test);
    auto group =
        std::find_if(groups.begin(), groups.end(), [&](const Group& g) { return g.key == name.key; });
    if (group == groups.end()) {
      groups.push_back({name.key, name.title, test.words, {}, {}});
      group = groups.end() - 1;
    }
    for (const Answer& answer : answers) {
      if (answer.test == test.key && answer.intensity && answer.grade && *answer.grade >= 0 &&
          *answer.grade < static_cast<int>(test.words.size())) {
        group->answers.push_back(&answer);
      }
    }
  }
  std::erase_if(groups, [](const Group& group) { return group.answers.empty(); });
  for (Group& group : groups) {
    std::sort(group.answers.begin(), group.answers.end()); // Tests were gone through one by one.
    keep_latest(group, static_cast<std::size_t>(rules.latest_readings));
  }
  return groups;
}

} // namespace matula::learner
