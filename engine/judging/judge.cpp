#include "engine/judging/figures.hpp"

#include "engine/scoring/rulebook.hpp"

#include <algorithm>
#include <cstdlib>
#include <future>
#include <iterator>

namespace matula::judging {

namespace {

/// Readings as the room of the learner's own lines takes them.
std::vector<learner::Answer> answers_of(const std::vector<records::TubeRead>& read,
                                        const std::map<long long, std::string>& items) {
  std::vector<learner::Answer> answers;
  answers.reserve(read.size());
  for (const auto& one : read) {
    const auto item = items.find(one.item);
    if (item == items.end()) {
      continue;
    }
    learner::Answer answer;
    answer.from = learner::From::Sitting;
    answer.test = item->second.substr(0, item->second.find('.'));
    answer.intensity = one.intensity;
    answer.grade = one.read;
    answers.push_back(std::move(answer));
  }
  return answers;
}

std::vector<StudentView> students_of(const std::vector<records::StudentSum>& sums,
                                     const std::vector<records::TubeRead>& read,
                                     const std::map<long long, std::string>& items, const Basis& basis) {
  std::map<long long, std::vector<records::TubeRead>> by_student;
  for (const auto& one : read) {
    by_student[one.student].push_back(one);
  }
  std::vector<StudentView> all;
  for (const auto& sum : sums) {
    StudentView one{sum, 0, {}};
    one.mean = sum.readings > 0 ? static_cast<int>((sum.per_mille + sum.readings / 2) / sum.readings) : 0;
    const auto answers = answers_of(by_student[sum.student], items);
    one.lines = learner::own_lines(learner::groups_of(answers, basis.tests, basis.lines), basis.lines);
    all.push_back(std::move(one));
  }
  return all;
}

} // namespace

tl::expected<Basis, scenario::Problems> load_basis(const std::filesystem::path& assets_folder) {
  const auto book = scoring::load_rulebook(assets_folder);
  const auto rules = load_rules(assets_folder);
  const auto lines = learner::load_rules(assets_folder);
  if (!book) {
    return tl::make_unexpected(book.error());
  }
  if (!rules || !lines) {
    return tl::make_unexpected(!rules ? rules.error() : lines.error());
  }
  return Basis{book->tests, book->pass, *rules, *lines};
}

StandardView standard_of(const std::vector<records::StandingCount>& counts, const Basis& basis) {
  StandardView view;
  view.mark = basis.pass.mark;
  std::vector<records::StandingCount> read;
  std::copy_if(counts.begin(), counts.end(), std::back_inserter(read),
               [](const auto& one) { return one.read; });
  const auto findings_do = [&](const records::StandingCount& one) {
    return one.missed <= basis.pass.missed_findings;
  };
  for (const auto& one : read) {
    const bool mean_does = one.mean >= view.mark;
    view.sittings += one.times;
    view.passed += one.passed ? one.times : 0;
    view.failed_by_findings += mean_does && !findings_do(one) ? one.times : 0;
    view.failed_by_safety += mean_does && one.safety_stop ? one.times : 0;
    view.borderline += std::abs(one.mean - view.mark) <= basis.rules.borderline ? one.times : 0;
  }
  const auto share = [&](int times) {
    return view.sittings > 0 ? static_cast<double>(times) / view.sittings : 0.0;
  };
  for (int mark = basis.rules.mark_from; mark <= basis.rules.mark_to; mark += basis.rules.mark_step) {
    int passed = 0;
    int by_mean = 0;
    for (const auto& one : read) {
      const bool mean_does = one.mean >= mark;
      by_mean += mean_does ? one.times : 0;
      passed += mean_does && findings_do(one) && !one.safety_stop ? one.times : 0;
    }
    view.steps.push_back({mark, share(passed), share(by_mean)});
  }
  return view;
}

ClassView judge(records::Store& store, const records::Scope& scope, const Basis& basis, Items wanted) {
  ClassView view;
  view.exercise = scope.exercise;
  view.label = scope.label;
  const auto items = records::item_names(store);
  // The readings of a large class, and the draws of their intervals, take as long as all the rest.
  auto agreement = std::async(std::launch::async, [&, beside = store.beside()]() mutable {
    return agreement_of(records::pair_counts(beside, scope), items, basis);
  });
  const auto standings = records::standing_counts(store, scope);
  view.standard = standard_of(standings, basis);
  for (const auto& one : standings) {
    view.sittings += one.times;
  }
  view.cases_left_out =
      wanted == Items::While_quick && scope.exercise.empty() && view.sittings > basis.rules.sittings_at_once;
  if (!view.cases_left_out) {
    view.cases = cases_of(records::item_marks(store, scope), basis.rules);
  }
  view.faults = records::fault_counts(store, scope);
  const auto read = records::tubes_read(store, scope, basis.rules.most_readings);
  view.students = students_of(records::student_sums(store, scope), read, items, basis);
  auto of_class = basis.lines;
  of_class.latest_readings = basis.rules.most_readings;
  const auto answers = answers_of(read, items);
  const auto groups = learner::groups_of(answers, basis.tests, of_class);
  view.lines = learner::own_lines(groups, of_class);
  view.swaps = learner::swapped_colours(groups, of_class);
  view.tests = agreement.get();
  for (const auto& test : view.tests) {
    view.readings += test.readings;
  }
  return view;
}

} // namespace matula::judging
