#include "engine/scenario/parts.hpp"

#include "engine/procedure/procedure.hpp"

#include <algorithm>

namespace matula::scenario {

namespace {

void check_order(const strict::Table& table, const std::string& none_key, double full, double none) {
  if (none <= full) {
    table.complain(none_key, "more than what earns full marks");
  }
}

void read_weights(const strict::Table& table, const Limits& limits, Marking& marking) {
  const strict::Range& weight = limits.ranges.at("weight");
  marking.grade_weight = table.integer_or("each_grade", weight, marking.grade_weight);
  marking.look_weight = table.integer_or("each_look", weight, marking.look_weight);
  marking.gravity_weight = table.integer_or("specific_gravity", weight, marking.gravity_weight);
  marking.process_weight = table.integer_or("procedure", weight, marking.process_weight);
}

void read_tolerances(const strict::Table& table, const Limits& limits, Marking& marking) {
  const strict::Range& gravity = limits.ranges.at("gravity_tolerance");
  const Measure degrees = range_measure(limits, "temperature_tolerance");
  marking.gravity_full = table.number_or("specific_gravity_full", gravity, marking.gravity_full);
  marking.gravity_none = table.number_or("specific_gravity_none", gravity, marking.gravity_none);
  marking.temperature_full_c = quantity_or(table, "temperature_full", degrees, marking.temperature_full_c);
  marking.temperature_none_c = quantity_or(table, "temperature_none", degrees, marking.temperature_none_c);
  check_order(table, "specific_gravity_none", marking.gravity_full, marking.gravity_none);
  check_order(table, "temperature_none", marking.temperature_full_c, marking.temperature_none_c);
}

MarkingRules read_rules(const strict::Table& table) {
  const strict::Range per_mille{0, 1000, "per mille"};
  constexpr std::size_t distances = 6;
  MarkingRules rules;
  if (table.has("loss")) {
    for (const double loss : table.numbers("loss", per_mille, distances)) {
      rules.loss.push_back(static_cast<int>(loss));
    }
  }
  const auto integer = [&table](const char* key, const strict::Range& range) {
    return table.has(key) ? std::optional(table.integer(key, range)) : std::nullopt;
  };
  rules.missed_finding = integer("missed_finding", per_mille);
  rules.false_alarm = integer("false_alarm", per_mille);
  rules.pass_mark = integer("pass_mark", per_mille);
  rules.missed_findings = integer("missed_findings", {0, 100, "findings"});
  if (table.has("reader_spread")) {
    rules.reader_spread = table.number("reader_spread", {0.01, 2, "grades"});
  }
  return rules;
}

} // namespace

bool Asked::has(std::string_view procedure) const {
  return std::find(procedures.begin(), procedures.end(), procedure) != procedures.end();
}

Asked read_asked(const strict::Table& root) {
  const strict::Table table = root.table("asked");
  std::vector<std::string> all{"look", "specific_gravity"};
  const std::vector<procedure::Procedure>& procedures = procedure::shipped_list();
  for (const auto& one : procedures) {
    all.push_back(one.key);
  }
  const std::vector<std::string> wanted = table.words("tests", all);
  const auto has = [&](const std::string& word) {
    return std::find(wanted.begin(), wanted.end(), word) != wanted.end();
  };
  Asked asked;
  asked.look = has("look");
  asked.specific_gravity = has("specific_gravity");
  for (const auto& one : procedures) {
    if (has(one.key)) {
      asked.procedures.push_back(one.key);
    }
  }
  return asked;
}

Marking read_marking(const strict::Table& root, const Limits& limits) {
  Marking marking;
  if (const auto weights = root.table_if_any("weights")) {
    read_weights(*weights, limits, marking);
  }
  if (const auto tolerances = root.table_if_any("tolerances")) {
    read_tolerances(*tolerances, limits, marking);
  }
  if (const auto rules = root.table_if_any("marking")) {
    marking.rules = read_rules(*rules);
  }
  return marking;
}

} // namespace matula::scenario
