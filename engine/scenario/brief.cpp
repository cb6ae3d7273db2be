#include "engine/scenario/brief.hpp"

#include "engine/procedure/curve.hpp"
#include "engine/reception/book.hpp"
#include "engine/scenario/scenario.hpp"

namespace matula::scenario {

namespace {

AskedTest asked_test(const procedure::Procedure& one) {
  AskedTest asked{one.title, one.request, one.item(), one.words, one.number.unit, one.number.example, {}};
  for (const procedure::CurveItem& line : procedure::curve_items(one)) {
    const bool standard = line.line == procedure::CurveLine::Standard;
    asked.curve.push_back({line.item, line.words, line.is_reading(), line.line == procedure::CurveLine::Net,
                           standard ? std::optional(one.curve->values[line.standard]) : std::nullopt});
  }
  return asked;
}

} // namespace

Brief brief_of(const Scenario& scenario) {
  Brief brief;
  brief.key = scenario.key;
  brief.title = scenario.title;
  brief.level = scenario.level;
  brief.story = scenario.story;
  brief.patient = scenario.patient.name + ", " + scenario.patient.age_sex + ", " + scenario.patient.ward;
  brief.request = scenario.patient.request;
  brief.specimen_note = scenario.patient.specimen_note;
  if (const auto& book = reception::shipped_book(); scenario.collection && book) {
    brief.reception = reception::show(*scenario.collection, *book);
  }
  brief.reagents_out = scenario.reagents_out;
  brief.calibration_c = scenario.rules.calibration_c;
  brief.per_degrees_c = scenario.rules.per_degrees_c;
  brief.protein_per_g_dl = scenario.rules.protein_per_g_dl;
  brief.glucose_per_g_dl = scenario.rules.glucose_per_g_dl;
  brief.asks_look = scenario.asked.look;
  brief.asks_gravity = scenario.asked.specific_gravity;
  for (const std::string& key : scenario.asked.procedures) {
    brief.tests.push_back(asked_test(*procedure::find_shipped(key)));
  }
  for (const Decision& decision : scenario.decisions) {
    brief.questions.push_back({decision.key, decision.prompt, decision.options});
  }
  return brief;
}

} // namespace matula::scenario
