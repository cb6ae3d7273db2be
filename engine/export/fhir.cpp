#include "engine/export/fhir.hpp"

#include "engine/export/tables.hpp"

#include <algorithm>
#include <cstdlib>
#include <fmt/format.h>
#include <nlohmann/json.hpp>

namespace matula::exports {

namespace {

using nlohmann::json;

constexpr const char* loinc = "http://loinc.org";
constexpr const char* ucum = "http://unitsofmeasure.org";
constexpr const char* own_codes = "https://matula.invalid/fhir/CodeSystem/bench-item";
constexpr const char* own_words = "https://matula.invalid/fhir/CodeSystem/bench-word";
constexpr const char* notice = "Training result of a bench simulator. No patient was examined.";

/// What marks every resource as not to be taken for a patient's.
json training() {
  return {{"security", json::array({{{"system", "http://terminology.hl7.org/CodeSystem/v3-ActReason"},
                                     {"code", "HTEST"},
                                     {"display", "test health data"}}})}};
}

json note() {
  return json::array({{{"text", notice}}});
}

/// A word a code may be: without blanks at its ends, single ones inside.
std::string code_of(const std::string& word) {
  std::string code;
  for (const char letter : word) {
    if (letter != ' ' || (!code.empty() && code.back() != ' ')) {
      code += letter;
    }
  }
  return code;
}

std::optional<double> number_in(const std::string& text) {
  char* end = nullptr;
  const double value = std::strtod(text.c_str(), &end);
  return end != text.c_str() && std::string(end).find_first_not_of(" \t") == std::string::npos
             ? std::optional<double>(value)
             : std::nullopt;
}

json value_of(const std::string& entered, const Code& code) {
  const auto number = number_in(entered);
  if (!code.ucum.empty() && number) {
    return {
        {"valueQuantity", {{"value", *number}, {"unit", code.ucum}, {"system", ucum}, {"code", code.ucum}}}};
  }
  return {
      {"valueCodeableConcept",
       {{"coding", json::array({{{"system", own_words}, {"code", code_of(entered)}, {"display", entered}}})},
        {"text", entered}}}};
}

json concept_of(const records::MarkRow& mark, const Code& code) {
  json coding = json::array();
  if (!code.loinc.empty()) {
    coding.push_back({{"system", loinc}, {"code", code.loinc}, {"display", code.name}});
  }
  coding.push_back({{"system", own_codes}, {"code", mark.item}, {"display", mark.label}});
  return {{"coding", coding}, {"text", mark.label}};
}

json entry(const std::string& id, json resource) {
  return {
      {"fullUrl", "https://matula.invalid/fhir/" + resource["resourceType"].get<std::string>() + "/" + id},
      {"resource", std::move(resource)}};
}

json observation(const std::string& id, const records::SittingRow& row, const records::MarkRow& mark,
                 const Code& code) {
  json one = {
      {"resourceType", "Observation"},
      {"id", id},
      {"meta", training()},
      {"status", "final"},
      {"category",
       json::array({{{"coding",
                      json::array({{{"system", "http://terminology.hl7.org/CodeSystem/observation-category"},
                                    {"code", "laboratory"}}})}}})},
      {"code", concept_of(mark, code)},
      {"subject", {{"reference", "Patient/simulated"}}},
      {"issued", moment_of(row.received_s)},
      {"performer", json::array({{{"display", row.pseudonym}}})},
      {"note", note()}};
  if (!code.method.empty()) {
    one["method"] = {{"text", code.method}};
  }
  one.update(value_of(mark.entered, code));
  return one;
}

json report(const std::string& id, const records::SittingRow& row, const Codes& codes, const json& results) {
  json one = {
      {"resourceType", "DiagnosticReport"},
      {"id", id},
      {"meta", training()},
      {"status", row.handed_in ? "final" : "partial"},
      {"category",
       json::array({{{"coding", json::array({{{"system", "http://terminology.hl7.org/CodeSystem/v2-0074"},
                                              {"code", "LAB"}}})}}})},
      {"code",
       {{"coding", json::array({{{"system", loinc}, {"code", codes.panel}, {"display", codes.panel_name}}})},
        {"text", row.title}}},
      {"subject", {{"reference", "Patient/simulated"}}},
      {"issued", moment_of(row.received_s)},
      {"performer", json::array({{{"display", row.pseudonym}}})},
      {"conclusion", std::string(notice) + ' ' + codes.notice}};
  if (!results.empty()) {
    one["result"] = results;
  }
  return one;
}

} // namespace

std::string report_bundle(const records::SittingRow& row, const std::vector<records::MarkRow>& marks,
                          const std::vector<procedure::Procedure>& tests, const Codes& codes) {
  json observations = json::array();
  json results = json::array();
  int number = 0;
  for (const auto& mark : marks) {
    const auto found = codes.by_item.find(mark.item);
    const bool of_a_test =
        std::any_of(tests.begin(), tests.end(), [&](const auto& test) { return test.item() == mark.item; });
    if (mark.entered.empty() || (found == codes.by_item.end() && !of_a_test)) {
      continue; // Nothing was written, or it is no result: a question, a line of the calculation.
    }
    const std::string id = fmt::format("sitting-{}-{}", row.number, ++number);
    observations.push_back(
        entry(id, observation(id, row, mark, found == codes.by_item.end() ? Code{} : found->second)));
    results.push_back({{"reference", "Observation/" + id}});
  }
  const json patient = {{"resourceType", "Patient"},
                        {"id", "simulated"},
                        {"meta", training()},
                        {"active", false},
                        {"name", json::array({{{"text", "Simulated patient (invented)"}}})}};
  const std::string id = fmt::format("sitting-{}", row.number);
  json entries = json::array({entry(id, report(id, row, codes, results)), entry("simulated", patient)});
  entries.insert(entries.end(), observations.begin(), observations.end());
  const json bundle = {{"resourceType", "Bundle"},
                       {"id", id},
                       {"meta", training()},
                       {"type", "collection"},
                       {"timestamp", moment_of(row.received_s)},
                       {"entry", entries}};
  return bundle.dump(1, ' ', false, json::error_handler_t::replace) + '\n';
}

} // namespace matula::exports
