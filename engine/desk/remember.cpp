#include "engine/desk/remember.hpp"

#include "engine/scoring/rulebook.hpp"

#include <algorithm>

namespace matula::desk {

namespace {

constexpr int full_credit = 1000;

/// What a test trains, in the words of the record.
std::string skill_of(const std::string& test) {
  if (test == "heat" || test == "ssa") {
    return "turbidity";
  }
  return test == "benedict" ? "copper" : test == "heller" || test == "rothera" ? "ring" : test;
}

int credit_of(const scoring::Mark& mark) {
  return mark.possible > 0 ? mark.earned * full_credit / mark.possible : 0;
}

const scoring::Mark* mark_of(const scoring::Report& report, const std::string& item) {
  const auto found = std::find_if(report.marks.begin(), report.marks.end(),
                                  [&](const scoring::Mark& mark) { return mark.item == item; });
  return found == report.marks.end() || found->entered.empty() || found->possible == 0 ? nullptr : &*found;
}

} // namespace

std::filesystem::path learner_folder(const std::filesystem::path& sittings) {
  return sittings / "learner";
}

std::filesystem::path record_file(const std::filesystem::path& learner_folder) {
  return learner_folder / "record.jsonl";
}

std::vector<learner::Answer> answers_of(const scoring::Report& report, const scoring::Rulebook& rules,
                                        const std::string& sitting, std::int64_t when_s) {
  std::vector<learner::Answer> answers;
  const auto add = [&](const scoring::Mark& mark, const std::string& skill,
                       const std::string& test) -> auto& {
    learner::Answer answer;
    answer.when_s = when_s;
    answer.from = learner::From::Sitting;
    answer.skill = skill;
    answer.test = test;
    answer.unknown = "sitting/" + sitting + "/" + mark.item;
    answer.credit = credit_of(mark);
    answer.written = mark.entered;
    answer.expected = mark.expected;
    answers.push_back(std::move(answer));
    return answers.back();
  };
  for (const auto& tube : report.tubes) {
    const auto* rule = rules.find_test(tube.test);
    const auto* mark = rule == nullptr ? nullptr : mark_of(report, rule->item());
    const auto grade = mark == nullptr ? std::nullopt : rule->grade(mark->entered);
    if (!grade || tube.learner_vessel.empty() || tube.learner_tube_word.empty()) {
      continue;
    }
    auto& answer = add(*mark, skill_of(tube.test), tube.test);
    answer.intensity = tube.learner_intensity;
    answer.grade = static_cast<int>(*grade);
    answer.fault = mark->root;
  }
  if (const auto* mark = mark_of(report, "sg.reading")) {
    add(*mark, "meniscus", "");
  }
  if (const auto* mark = mark_of(report, "sg.corrected")) {
    auto& answer = add(*mark, "corrections", "");
    const int possible = report.possible(scoring::Ledger::Arithmetic);
    answer.credit = possible > 0 ? report.earned(scoring::Ledger::Arithmetic) * full_credit / possible : 0;
  }
  if (const auto* mark = mark_of(report, "reception")) {
    add(*mark, "reception", "");
  }
  return answers;
}

} // namespace matula::desk
