#include "engine/author/schema.hpp"

#include "engine/author/schema_parts.hpp"
#include "engine/procedure/procedure.hpp"
#include "engine/scenario/review.hpp"

namespace matula::author {

namespace {

using scenario::range_measure;

Json patient() {
  return table("The request form: all a student knows of the patient, who is invented",
               {{"name", words("name")},
                {"age_sex", words("such as \"41, male\"")},
                {"ward", words("ward or clinic")},
                {"request", words("the doctor's words")},
                {"specimen_note", words("kind, time and container, as on the form")}},
               {"name", "age_sex", "ward", "request", "specimen_note"});
}

Json rules(const scenario::Limits& limits) {
  const auto& solute = limits.ranges.at("solute_rule");
  return table("The arithmetic the laboratory has written down",
               {{"one_division_per",
                 quantity("0.001 for every so many degrees (3 C)", range_measure(limits, "per_degrees"))},
                {"protein_per_g_dl", number("taken off for each g/dL (0.003)", solute)},
                {"glucose_per_g_dl", number("taken off for each g/dL (0.004)", solute)}},
               {});
}

Json asked() {
  std::vector<std::string> tests{"look", "specific_gravity"};
  for (const auto& one : procedure::shipped_list()) {
    tests.push_back(one.key);
  }
  return table("What stands on the worksheet and in the marks", {{"tests", list_of("tests", tests, false)}},
               {"tests"});
}

Json weights(const scenario::Limits& limits) {
  const auto& weight = limits.ranges.at("weight");
  return table("What things are worth, in marks",
               {{"each_grade", whole("each graded test (20)", weight)},
                {"each_look", whole("each of colour, clarity, odour (5)", weight)},
                {"specific_gravity", whole("reading and calculation together (20)", weight)},
                {"procedure", whole("shared out over the parts (20)", weight)}},
               {});
}

Json tolerances(const scenario::Limits& limits) {
  const auto& gravity = limits.ranges.at("gravity_tolerance");
  const auto degrees = range_measure(limits, "temperature_tolerance");
  return table("How near a figure must come",
               {{"specific_gravity_full", number("full marks up to this error (0.001)", gravity)},
                {"specific_gravity_none", number("none from this error on (0.003)", gravity)},
                {"temperature_full", quantity("full marks up to this error (1 C)", degrees)},
                {"temperature_none", quantity("none from this error on (3 C)", degrees)}},
               {});
}

Json marking() {
  const strict::Range per_mille{0, 1000, ""};
  Json loss = {{"description", "per mille lost for 0 to 5 grades off"},
               {"type", "array"},
               {"items", number("per mille", per_mille)},
               {"minItems", 6},
               {"maxItems", 6}};
  return table(
      "What this case marks otherwise than the rules of the house",
      {{"loss", loss},
       {"missed_finding", whole("lost besides when a finding was read as negative, per mille", per_mille)},
       {"false_alarm", whole("lost besides when a negative tube was reported, per mille", per_mille)},
       {"reader_spread", number("how far apart trained readers lie, grades", {0.01, 2, ""})},
       {"pass_mark", whole("mean of the graded readings to pass, per mille", per_mille)},
       {"missed_findings", whole("findings that may be missed in a passed sitting", {0, 100, ""})}},
      {});
}

Json decisions(const scenario::Limits& limits) {
  Json key = words("small letters, digits and _; no two alike");
  key["pattern"] = "^[a-z0-9_]+$";
  const Json options = {{"description", "two answers or more: key = \"wording\""},
                        {"type", "object"},
                        {"minProperties", 2},
                        {"additionalProperties", words("wording")}};
  return tables("A question about what the findings mean",
                {{"key", key},
                 {"prompt", words("the question")},
                 {"right", words("key of the right option")},
                 {"why", words("shown when it was missed")},
                 {"weight", whole("marks (10)", limits.ranges.at("weight"))},
                 {"options", options}},
                {"key", "prompt", "right", "why", "options"});
}

Json review() {
  Json date = words("such as \"2026-11-27\"");
  date["pattern"] = "^[0-9]{4}-[0-9]{2}-[0-9]{2}$";
  Json marks = Json::object();
  for (const auto& ledger : scenario::ledger_words()) {
    marks[ledger] = whole("marks earned in this ledger", {0, 10000, ""});
  }
  Json earned = table("What it must earn, by ledger", marks, {});
  earned["minProperties"] = 1;
  return table("Who stands for the case",
               {{"author", words("who wrote it")},
                {"reviewer", maybe_words("the colleague who looked at it")},
                {"version", words("such as \"1.2\"")},
                {"change",
                 tables("One entry of the changelog",
                        {{"version", words("version")}, {"date", date}, {"words", words("what was changed")}},
                        {"version", "date", "words"})},
                {"worked", tables("A worked sitting: `matula check` plays it and compares",
                                  {{"steps", words("steps file, from the folder of the case")},
                                   {"marks", earned},
                                   {"passed", yes_or_no("whether it is a passed sitting")}},
                                  {"steps", "marks"})}},
               {"author", "version"});
}

} // namespace

std::string scenario_schema(const Shelf& shelf) {
  const auto& limits = *shelf.limits;
  const Json properties = {
      {"title", words("shown in the list of cases")},
      {"level", one_of("sorts the list of cases", {"newcomer", "first", "trap", "exam"})},
      {"seed", whole("fixes what is left to chance; no two cases alike", limits.ranges.at("seed"))},
      {"story", words("shown with the request")},
      {"debrief", words("shown after the marks")},
      {"patient", patient()},
      {"specimen", specimen_schema(shelf)},
      {"collection", collection_schema(shelf)},
      {"bench", bench_schema(shelf)},
      {"laboratory_rules", rules(limits)},
      {"asked", asked()},
      {"weights", weights(limits)},
      {"tolerances", tolerances(limits)},
      {"marking", marking()},
      {"decision", decisions(limits)},
      {"review", review()},
  };
  Json all = {{"$schema", "https://json-schema.org/draft/2020-12/schema"},
              {"$id", "urn:matula:scenario:1"},
              {"title", "A case for the bench"}};
  all.update(table("One case: a hidden specimen, a request form, and what is asked", properties,
                   {"title", "level", "seed", "story", "debrief", "patient", "specimen", "bench", "asked"}));
  return all.dump(1) + "\n";
}

} // namespace matula::author
