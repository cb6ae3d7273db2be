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

std::optional<WithInterval> kappa(const Gathered& of, statistics::Weighting weighting, const Rules& rules) {
  const auto weights = statistics::agreement_weights(weighting, of.all.categories());
  const auto value = statistics::kappa_value(of.all, weights);
  if (!value) {
    return std::nullopt;
  }
  return WithInterval{
      *value, statistics::kappa_interval(tables(of.by_student), weights, rules.draws, seed, rules.coverage)};
}

std::optional<WithInterval> gwet(const Gathered& of, const Rules& rules) {
  const auto weights = statistics::agreement_weights(statistics::Weighting::Linear, of.all.categories());
  const auto value = statistics::gwet_value(of.all, weights);
  if (!value) {
    return std::nullopt;
  }
  return WithInterval{
      *value, statistics::gwet_interval(tables(of.by_student), weights, rules.draws, seed, rules.coverage)};
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
    one.kappa_linear = kappa(of, statistics::Weighting::Linear, rules);
    one.kappa_quadratic = kappa(of, statistics::Weighting::Quadratic, rules);
    one.gwet_linear = gwet(of, rules);
  }
  return one;
}

} // namespace

std::vector<TestAgreement> agreement_of(const std::vector<records::PairCount>& counts,
                                        const std::map<long long, std::string>& items, const Basis& basis) {
  std::vector<TestAgreement> all;
  for (const scoring::TestRule& test : basis.tests) {
    const std::size_t words = test.words.size();
    Gathered of;
    of.all = PairTable(words);
    for (const auto& count : counts) {
      const auto item = items.find(count.item);
      if (item == items.end() || item->second != test.item() || count.truth < 0 ||
          static_cast<std::size_t>(count.truth) >= words || count.read >= static_cast<int>(words)) {
        continue;
      }
      of.missed += count.missed;
      of.false_alarms += count.false_alarms;
      if (count.read < 0) {
        of.unwritten += count.times;
        continue;
      }
      auto& student = of.by_student.try_emplace(count.student, words).first->second;
      student.add(static_cast<std::size_t>(count.truth), static_cast<std::size_t>(count.read), count.times);
      of.all.add(static_cast<std::size_t>(count.truth), static_cast<std::size_t>(count.read), count.times);
    }
    if (of.all.total() > 0 || of.unwritten > 0) {
      all.push_back(made(test, of, basis.rules));
    }
  }
  return all;
}

} // namespace matula::judging
