#include "engine/judging/figures.hpp"

#include <map>

namespace matula::judging {

namespace {

using statistics::PairTable;

constexpr std::uint64_t seed = 20270930; // Of the draws: the same store gives the same intervals.

struct Gathered {
  PairTable all{0};
  std::map<long long, PairTable> by_student;
  int unwritten = 0;
  int missed = 0;
  int false_alarms = 0;
};

std::vector<PairTable> tables(const std::map<long long, PairTable>& by_student) {
  std::vector<PairTable> all;
  for (const auto& [student, table] : by_student) {
    all.push_back(table);
  }
  return all;
}

/// The coefficients with their intervals, all from the same draws.
void add_coefficients(TestAgreement& one, const Gathered& of, const Rules& rules) {
  using statistics::Coefficient;
  const std::size_t grades = of.all.categories();
  const auto linear = statistics::agreement_weights(statistics::Weighting::Linear, grades);
  const auto quadratic = statistics::agreement_weights(statistics::Weighting::Quadratic, grades);
  const auto intervals = statistics::intervals(tables(of.by_student),
                                               {{Coefficient::Kind::Kappa, linear},
                                                {Coefficient::Kind::Kappa, quadratic},
                                                {Coefficient::Kind::Gwet, linear}},
                                               rules.draws, seed, rules.coverage);
  const auto with = [&](std::optional<double> value, std::size_t place) {
    return value ? std::optional<WithInterval>({*value, intervals[place]}) : std::nullopt;
  };
  one.kappa_linear = with(statistics::kappa_value(of.all, linear), 0);
  one.kappa_quadratic = with(statistics::kappa_value(of.all, quadratic), 1);
  one.gwet_linear = with(statistics::gwet_value(of.all, linear), 2);
}

TestAgreement made(const scoring::TestRule& test, const Gathered& of, const Rules& rules) {
  TestAgreement one;
  one.test = test.key;
  one.title = test.title;
  one.words = test.words;
  one.table = of.all;
  one.readings = static_cast<int>(of.all.total());
  one.unwritten = of.unwritten;
  one.students = static_cast<int>(of.by_student.size());
  one.missed_findings = of.missed;
  one.false_alarms = of.false_alarms;
  if (one.readings >= rules.bias_from) {
    one.plain = statistics::plain_agreement(of.all);
  }
  if (one.readings >= rules.agreement_from) {
    add_coefficients(one, of, rules);
  }
  return one;
}

/// Adds a count of one test's readings; a place outside its words is no reading of it.
void gather(Gathered& of, const records::PairCount& count) {
  const std::size_t words = of.all.categories();
  if (count.truth < 0 || static_cast<std::size_t>(count.truth) >= words ||
      count.read >= static_cast<int>(words)) {
    return;
  }
  of.missed += count.missed;
  of.false_alarms += count.false_alarms;
  if (count.read < 0) {
    of.unwritten += count.times;
    return;
  }
  auto& student = of.by_student.try_emplace(count.student, words).first->second;
  student.add(static_cast<std::size_t>(count.truth), static_cast<std::size_t>(count.read), count.times);
  of.all.add(static_cast<std::size_t>(count.truth), static_cast<std::size_t>(count.read), count.times);
}

} // namespace

std::vector<TestAgreement> agreement_of(const std::vector<records::PairCount>& counts,
                                        const std::map<long long, std::string>& items, const Basis& basis) {
  std::map<std::string, const scoring::TestRule*> tests;
  for (const scoring::TestRule& test : basis.tests) {
    tests[test.item()] = &test;
  }
  std::map<long long, Gathered*> by_item; // A large class has hundreds of thousands of counts.
  std::map<std::string, Gathered> by_test;
  for (const auto& [number, name] : items) {
    if (const auto test = tests.find(name); test != tests.end()) {
      Gathered& of = by_test[test->second->key];
      of.all = PairTable(test->second->words.size());
      by_item[number] = &of;
    }
  }
  for (const auto& count : counts) {
    if (const auto of = by_item.find(count.item); of != by_item.end()) {
      gather(*of->second, count);
    }
  }
  std::vector<TestAgreement> all;
  for (const scoring::TestRule& test : basis.tests) {
    const auto of = by_test.find(test.key);
    if (of != by_test.end() && (of->second.all.total() > 0 || of->second.unwritten > 0)) {
      all.push_back(made(test, of->second, basis.rules));
    }
  }
  return all;
}

} // namespace matula::judging
