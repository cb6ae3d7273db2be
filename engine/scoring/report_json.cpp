#include "engine/scoring/report_json.hpp"

#include "engine/scoring/standards.hpp"

#include <nlohmann/json.hpp>

namespace matula::scoring {
namespace {

using nlohmann::json;

json mark_json(const Mark& mark) {
  return {{"ledger", to_word(mark.ledger)}, {"item", mark.item},         {"label", mark.label},
          {"earned", mark.earned},          {"possible", mark.possible}, {"entered", mark.entered},
          {"expected", mark.expected},      {"reason", mark.reason},     {"root", mark.root}};
}

json tube_json(const ByTheBook& tube) {
  return {{"test", tube.test},
          {"learner_vessel", tube.learner_vessel},
          {"learner_read_at_s", tube.learner_read_at_s},
          {"by_the_book", tube.reference_word},
          {"learner_tube", tube.learner_tube_word}};
}

json standing_json(const Standing& standing) {
  return {{"readings", standing.readings},
          {"mean", standing.mean},
          {"best_constant", standing.best_constant},
          {"skill", standing.skill ? json(*standing.skill) : json(nullptr)},
          {"exact", standing.exact},
          {"within_one", standing.within_one},
          {"missed_findings", standing.missed_findings},
          {"false_alarms", standing.false_alarms},
          {"passed", standing.passed},
          {"not_passed_because", standing.not_passed_because}};
}

} // namespace

json to_json(const Report& report) {
  json ledgers = json::object();
  for (const auto ledger : all_ledgers) {
    ledgers[to_word(ledger)] = {{"earned", report.earned(ledger)}, {"possible", report.possible(ledger)}};
  }
  json marks = json::array();
  for (const auto& mark : report.marks) {
    marks.push_back(mark_json(mark));
  }
  json tubes = json::array();
  for (const auto& tube : report.tubes) {
    tubes.push_back(tube_json(tube));
  }
  json losses = json::array();
  for (const auto& loss : report.losses) {
    losses.push_back(
        {{"root", loss.root}, {"words", loss.words}, {"lost", loss.lost}, {"items", loss.items}});
  }
  json findings = json::array();
  for (const auto& finding : report.findings) {
    findings.push_back({{"test", finding.test},
                        {"read_right", finding.read_right},
                        {"interpreted_right", finding.interpreted_right},
                        {"words", finding.words}});
  }
  return {{"ledgers", ledgers},
          {"losses", losses},
          {"findings", findings},
          {"standing", standing_json(report.standing)},
          {"safety_stop", report.safety_stop},
          {"marks", marks},
          {"tubes", tubes},
          {"debrief", report.debrief}};
}

} // namespace matula::scoring
