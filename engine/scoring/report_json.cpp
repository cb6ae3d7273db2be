#include "engine/scoring/report_json.hpp"

#include "engine/scoring/standards.hpp"

#include <nlohmann/json.hpp>

namespace matula::scoring {
namespace {

using nlohmann::json;

json mark_json(const Mark& mark) {
  return {{"ledger", to_word(mark.ledger)}, {"item", mark.item},         {"label", mark.label},
          {"earned", mark.earned},          {"possible", mark.possible}, {"entered", mark.entered},
          {"expected", mark.expected},      {"reason", mark.reason}};
}

json tube_json(const ByTheBook& tube) {
  return {{"test", tube.test},
          {"learner_vessel", tube.learner_vessel},
          {"learner_read_at_s", tube.learner_read_at_s},
          {"by_the_book", tube.reference_word},
          {"learner_tube", tube.learner_tube_word}};
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
  return {{"ledgers", ledgers},
          {"safety_stop", report.safety_stop},
          {"marks", marks},
          {"tubes", tubes},
          {"debrief", report.debrief}};
}

} // namespace matula::scoring
