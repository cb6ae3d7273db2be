#include "engine/author/schema.hpp"

#include "engine/author/schema_parts.hpp"
#include "engine/procedure/procedure.hpp"
#include "engine/scenario/review.hpp"

namespace matula::author {

namespace {

Json patient() {
  return table("The request form: all a student knows of the patient, who is invented",
               {{"name", words("name")},
                {"age_sex", words("such as \"41, male\"")},
                {"ward", words("ward or clinic")},
                {"request", words("the doctor's words")},
                {"specimen_note", words("kind, time and container, as on the form")}},
               {"name", "age_sex", "ward", "request", "specimen_note"});
}

Json asked() {
  std::vector<std::string> tests{"look", "specific_gravity"};
  for (const auto& one : procedure::shipped_list()) {
    tests.push_back(one.key);
  }
  return table("What stands on the worksheet and in the marks", {{"tests", list_of("tests", tests, false)}},
               {"tests"});
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
      {"laboratory_rules", table("The arithmetic the laboratory has written down", rules_fields(limits))},
      {"asked", asked()},
      {"weights", table("What things are worth, in marks", weights_fields(limits))},
      {"tolerances", table("How near a figure must come", tolerances_fields(limits))},
      {"marking", table("What this case marks otherwise than the rules of the house", marking_fields())},
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
