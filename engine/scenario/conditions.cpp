#include "engine/scenario/parts.hpp"

#include "engine/procedure/procedure.hpp"

#include <algorithm>

namespace matula::scenario {

namespace {

bool any_begins(const std::vector<std::string>& bottles, const std::string& beginning) {
  return std::any_of(bottles.begin(), bottles.end(),
                     [&](const std::string& bottle) { return bottle.rfind(beginning, 0) == 0; });
}

/// [bench.bottle_age] benedict = "400 d": only of bottles that are out.
void read_bottle_ages(const strict::Table& bench, const Limits& limits, Scenario& scenario) {
  const auto ages = bench.table_if_any("bottle_age");
  if (!ages) {
    return;
  }
  for (const std::string& bottle : ages->keys()) {
    const auto& out = scenario.reagents_out;
    if (std::find(out.begin(), out.end(), bottle) == out.end()) {
      ages->complain(bottle, "a bottle that stands in `reagents`");
      (void)ages->has(bottle);
      continue;
    }
    const auto days = read_quantity(*ages, bottle, range_measure(limits, "bottle_age"));
    scenario.bottle_age_days[bottle] = days.value_or(0);
  }
}

} // namespace

void read_conditions(const strict::Table& root, const Limits& limits, const matter::Catalogue& catalogue,
                     Scenario& scenario) {
  const strict::Table table = root.table("bench");
  scenario.room_c = read_quantity(table, "room", range_measure(limits, "room")).value_or(scenario.room_c);
  scenario.urinometer_zero_error =
      table.number_or("urinometer_zero_error", limits.ranges.at("zero_error"), 0);
  scenario.refractometer_zero_error =
      table.number_or("refractometer_zero_error", limits.ranges.at("zero_error"), 0);
  scenario.rules.calibration_c = quantity_or(
      table, "urinometer_calibration", range_measure(limits, "calibration"), scenario.rules.calibration_c);
  std::vector<std::string> bottles;
  for (const matter::Reagent& reagent : catalogue.reagents) {
    bottles.push_back(reagent.key);
  }
  scenario.reagents_out = table.words("reagents", bottles);
  read_bottle_ages(table, limits, scenario);
}

void read_rules(const strict::Table& root, const Limits& limits, LaboratoryRules& rules) {
  const auto table = root.table_if_any("laboratory_rules");
  if (!table) {
    return;
  }
  const strict::Range& solute = limits.ranges.at("solute_rule");
  rules.per_degrees_c =
      quantity_or(*table, "one_division_per", range_measure(limits, "per_degrees"), rules.per_degrees_c);
  rules.protein_per_g_dl = table->number_or("protein_per_g_dl", solute, rules.protein_per_g_dl);
  rules.glucose_per_g_dl = table->number_or("glucose_per_g_dl", solute, rules.glucose_per_g_dl);
}

void check_reagents(const strict::Table& root, const Asked& asked, const std::vector<std::string>& out) {
  const auto bench = root.table_if_any("bench");
  if (!bench || !bench->has("reagents")) {
    return;
  }
  for (const std::string& key : asked.procedures) {
    for (const std::string& beginning : procedure::find_shipped(key)->needs) {
      if (!any_begins(out, beginning)) {
        bench->complain("reagents", "a bottle that begins with '" + beginning + "', because the " + key +
                                        " test is asked for");
      }
    }
  }
}

} // namespace matula::scenario
