#include "engine/judging/view_json.hpp"

#include "engine/scoring/standards.hpp"

#include <nlohmann/json.hpp>

namespace matula::judging {

namespace {

using nlohmann::json;

template <class T> json or_null(const std::optional<T>& value) {
  return value ? json(*value) : json(nullptr);
}

json figure(const std::optional<WithInterval>& one) {
  if (!one) {
    return nullptr;
  }
  return {{"value", one->value},
          {"low", one->interval ? json(one->interval->low) : json(nullptr)},
          {"high", one->interval ? json(one->interval->high) : json(nullptr)}};
}

json test_json(const TestAgreement& test) {
  json rows = json::array();
  for (std::size_t i = 0; i < test.words.size(); ++i) {
    json row = json::array();
    for (std::size_t j = 0; j < test.words.size(); ++j) {
      row.push_back(test.table.count(i, j));
    }
    rows.push_back(std::move(row));
  }
  json one = {{"test", test.test},
              {"words", test.words},
              {"shown_by_written", rows},
              {"readings", test.readings},
              {"unwritten", test.unwritten},
              {"students", test.students},
              {"missed_findings", test.missed_findings},
              {"false_alarms", test.false_alarms},
              {"kappa_linear", figure(test.kappa_linear)},
              {"kappa_quadratic", figure(test.kappa_quadratic)},
              {"ac2_linear", figure(test.gwet_linear)},
              {"bias", nullptr}};
  if (test.plain) {
    one["bias"] = test.plain->bias;
    one["bias_se"] = test.plain->bias_se;
    one["exact"] = test.plain->exact;
    one["within_one"] = test.plain->within_one;
  }
  return one;
}

json case_json(const CaseView& view) {
  json items = json::array();
  for (const auto& item : view.items) {
    items.push_back({{"item", item.item},
                     {"label", item.label},
                     {"ledger", scoring::to_word(item.ledger)},
                     {"students", item.students},
                     {"right", item.right},
                     {"with_rest", or_null(item.with_rest)},
                     {"favourite_wrong", item.favourite_wrong},
                     {"favourite_times", item.favourite_times},
                     {"behaved_badly", item.behaved_badly}});
  }
  return {{"case", view.exercise},
          {"students", view.students},
          {"kr20", or_null(view.kr20)},
          {"error", or_null(view.error)},
          {"items", items}};
}

json lines_json(const std::vector<learner::GroupLines>& groups) {
  json all = json::array();
  for (const auto& group : groups) {
    json lines = json::array();
    for (const auto& line : group.lines) {
      lines.push_back({{"below", line.below},
                       {"above", line.above},
                       {"reference", line.reference},
                       {"own", line.own.value},
                       {"low", line.own.low},
                       {"high", line.own.high},
                       {"sentence", line.sentence}});
    }
    all.push_back({{"group", group.key},
                   {"readings", group.readings},
                   {"shift", group.shift ? json(group.shift->value) : json(nullptr)},
                   {"spread", group.spread},
                   {"sentence", group.sentence},
                   {"lines", lines}});
  }
  return all;
}

} // namespace

std::string to_json(const ClassView& view) {
  json tests = json::array();
  for (const auto& test : view.tests) {
    tests.push_back(test_json(test));
  }
  json cases = json::array();
  for (const auto& one : view.cases) {
    cases.push_back(case_json(one));
  }
  json faults = json::array();
  for (const auto& fault : view.faults) {
    faults.push_back({{"root", fault.root},
                      {"label", fault.label},
                      {"students", fault.students},
                      {"times", fault.times},
                      {"lost", fault.lost}});
  }
  json students = json::array();
  for (const auto& one : view.students) {
    students.push_back({{"student", one.sum.pseudonym},
                        {"sittings", one.sum.sittings},
                        {"passed", one.sum.passed},
                        {"mean", one.mean},
                        {"readings", one.sum.readings},
                        {"exact", one.sum.exact},
                        {"within_one", one.sum.within_one},
                        {"missed_findings", one.sum.missed},
                        {"false_alarms", one.sum.false_alarms},
                        {"safety_stops", one.sum.stops},
                        {"lines", lines_json(one.lines)}});
  }
  json swaps = json::array();
  for (const auto& swap : view.swaps) {
    swaps.push_back({{"one", swap.one},
                     {"other", swap.other},
                     {"tubes", swap.tubes},
                     {"swapped", swap.swapped},
                     {"explained", swap.explained},
                     {"chance", swap.chance},
                     {"told", !swap.sentence.empty()}});
  }
  json steps = json::array();
  for (const auto& step : view.standard.steps) {
    steps.push_back({{"mark", step.mark}, {"passed", step.passed}, {"by_mean", step.by_mean}});
  }
  const auto& s = view.standard;
  const json all = {{"sittings", view.sittings},
                    {"readings", view.readings},
                    {"tests", tests},
                    {"cases", cases},
                    {"cases_left_out", view.cases_left_out},
                    {"faults", faults},
                    {"lines", lines_json(view.lines)},
                    {"swaps", swaps},
                    {"students", students},
                    {"standard",
                     {{"sittings", s.sittings},
                      {"passed", s.passed},
                      {"failed_by_findings", s.failed_by_findings},
                      {"failed_by_safety", s.failed_by_safety},
                      {"borderline", s.borderline},
                      {"mark", s.mark},
                      {"steps", steps}}}};
  return all.dump(1, ' ', false, json::error_handler_t::replace);
}

} // namespace matula::judging
