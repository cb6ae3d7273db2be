#include "engine/judging/figures.hpp"

#include "engine/scoring/rulebook.hpp"

#include <algorithm>
#include <cstdlib>

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

StandardView standard_of(const std::vector<records::SittingRow>& sittings, const Basis& basis) {
  StandardView view;
  view.mark = basis.pass.mark;
  std::vector<const records::SittingRow*> read;
  for (const auto& row : sittings) {
    if (row.standing.readings > 0) {
      read.push_back(&row);
    }
  }
  view.sittings = static_cast<int>(read.size());
  const auto findings_do = [&](const records::SittingRow& row) {
    return row.standing.missed_findings <= basis.pass.missed_findings;
  };
  const auto share = [&](int count) {
    return view.sittings > 0 ? static_cast<double>(count) / view.sittings : 0.0;
  };
  for (const auto* row : read) {
    const bool mean_does = row->standing.mean >= view.mark;
    view.passed += row->standing.passed ? 1 : 0;
    view.failed_by_findings += mean_does && !findings_do(*row) ? 1 : 0;
    view.failed_by_safety += mean_does && row->safety_stop ? 1 : 0;
    view.borderline += std::abs(row->standing.mean - view.mark) <= basis.rules.borderline ? 1 : 0;
  }
  for (int mark = basis.rules.mark_from; mark <= basis.rules.mark_to; mark += basis.rules.mark_step) {
    int passed = 0;
    int by_mean = 0;
    for (const auto* row : read) {
      const bool mean_does = row->standing.mean >= mark;
      by_mean += mean_does ? 1 : 0;
      passed += mean_does && findings_do(*row) && !row->safety_stop ? 1 : 0;
    }
    view.steps.push_back({mark, share(passed), share(by_mean)});
  }
  return view;
}

ClassView judge(records::Store& store, const records::Scope& scope, const Basis& basis) {
  ClassView view;
  view.exercise = scope.exercise;
  view.label = scope.label;
  const auto items = records::item_names(store);
  view.tests = agreement_of(records::pair_counts(store, scope), items, basis);
  for (const auto& test : view.tests) {
    view.readings += test.readings;
  }
  view.cases = cases_of(records::item_marks(store, scope), basis.rules);
  view.faults = records::fault_counts(store, scope);
  const auto read = records::tubes_read(store, scope, basis.rules.most_readings);
  view.students = students_of(records::student_sums(store, scope), read, items, basis);
  auto of_class = basis.lines;
  of_class.latest_readings = basis.rules.most_readings;
  const auto answers = answers_of(read, items);
  const auto groups = learner::groups_of(answers, basis.tests, of_class);
  view.lines = learner::own_lines(groups, of_class);
  view.swaps = learner::swapped_colours(groups, of_class);
  const auto sittings = store.sittings(scope);
  view.sittings = static_cast<int>(sittings.size());
  view.standard = standard_of(sittings, basis);
  return view;
}

} // namespace matula::judging
