#include "engine/command/report.hpp"

#include "engine/scoring/standards.hpp"

#include <nlohmann/json.hpp>

namespace matula::command {
namespace {

using nlohmann::json;

json mark_json(const scoring::Mark& mark) {
  return {{"ledger", scoring::to_word(mark.ledger)},
          {"item", mark.item},
          {"label", mark.label},
          {"earned", mark.earned},
          {"possible", mark.possible},
          {"entered", mark.entered},
          {"expected", mark.expected},
          {"reason", mark.reason}};
}

json tube_json(const scoring::ByTheBook& tube) {
  return {{"test", tube.test},
          {"learner_vessel", tube.learner_vessel},
          {"learner_read_at_s", tube.learner_read_at_s},
          {"by_the_book", tube.reference_word},
          {"learner_tube", tube.learner_tube_word}};
}

} // namespace

json to_json(const scoring::Report& report) {
  json ledgers = json::object();
  for (const auto ledger : scoring::all_ledgers) {
    ledgers[scoring::to_word(ledger)] = {{"earned", report.earned(ledger)},
                                         {"possible", report.possible(ledger)}};
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

json to_json(const std::vector<SeenThing>& things) {
  json all = json::array();
  for (const auto& thing : things) {
    json one = {{"name", thing.name}, {"words", thing.words}};
    if (!thing.colour_hex.empty()) {
      one["colour"] = thing.colour_hex;
      one["print_contrast"] = thing.print_contrast;
    }
    all.push_back(std::move(one));
  }
  return all;
}

} // namespace matula::command
