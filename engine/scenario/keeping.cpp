// The specimen's way from the patient to the bench: cells and organisms in it, legs, preservatives.
#include "engine/scenario/parts.hpp"

namespace matula::scenario {

namespace {

using Counts = std::vector<std::pair<std::string, double>>;

Counts read_counts(const strict::Table& specimen, const std::string& section,
                   const std::vector<Limit>& limits, Measure (*measure)(const Limit&),
                   const matter::Catalogue& catalogue) {
  Counts counts;
  const auto table = specimen.table_if_any(section);
  if (!table) {
    return counts;
  }
  for (const Limit& limit : limits) {
    if (!catalogue.find_particle(limit.key) || !table->has(limit.key)) {
      continue;
    }
    if (const auto number = read_quantity(*table, limit.key, measure(limit))) {
      counts.emplace_back(limit.key, *number);
    }
  }
  return counts;
}

std::vector<specimen::Leg> read_legs(const strict::Table& table, const Limits& limits) {
  std::vector<specimen::Leg> legs;
  for (const strict::Table& row : table.tables_or_none("leg")) {
    specimen::Leg leg;
    leg.hours = read_quantity(row, "hours", range_measure(limits, "leg_hours")).value_or(0);
    leg.temperature_c = read_quantity(row, "temperature", range_measure(limits, "leg_temperature"))
                            .value_or(leg.temperature_c);
    leg.open = row.boolean_or("open", false);
    leg.lux = quantity_or(row, "light", range_measure(limits, "leg_light"), 0);
    legs.push_back(leg);
  }
  return legs;
}

/// A dose may be written in grams or in millilitres for each 100 mL; kept in millilitres.
double read_dose(const strict::Table& row, const Limits& limits, const matter::Reagent* reagent) {
  Measure measure = range_measure(limits, "dose");
  if (reagent != nullptr) {
    measure.units.push_back({"g", 1 / reagent->grams_per_ml});
  }
  return read_quantity(row, "dose_per_100_ml", measure).value_or(0);
}

std::vector<specimen::Preservative> read_preservatives(const strict::Table& table, const Limits& limits,
                                                       const matter::Catalogue& catalogue) {
  std::vector<std::string> bottles;
  for (const matter::Reagent& reagent : catalogue.reagents) {
    bottles.push_back(reagent.key);
  }
  std::vector<specimen::Preservative> added;
  for (const strict::Table& row : table.tables_or_none("preservative")) {
    specimen::Preservative one;
    one.reagent = row.word("bottle", bottles);
    one.ml_per_100_ml = read_dose(row, limits, catalogue.find_reagent(one.reagent));
    one.at_hours = quantity_or(row, "at", range_measure(limits, "leg_hours"), 0);
    added.push_back(one);
  }
  return added;
}

} // namespace

void read_keeping(const strict::Table& specimen, const Limits& limits, const matter::Catalogue& catalogue,
                  specimen::Specimen& made) {
  made.cells_per_ul = read_counts(specimen, "cells", limits.cells, cell_measure, catalogue);
  made.growing_per_ml = read_counts(specimen, "infection", limits.organisms, organism_measure, catalogue);
  made.resting_per_ml = read_counts(specimen, "contamination", limits.organisms, organism_measure, catalogue);
  if (!(made.growing_per_ml.empty() && made.resting_per_ml.empty()) &&
      !specimen.table("dissolved").has("other_organics")) {
    specimen.complain(made.growing_per_ml.empty() ? "contamination" : "infection",
                      "'other_organics' in [specimen.dissolved] as well: organisms live on it");
  }
  made.life = read_legs(specimen, limits);
  made.preservatives = read_preservatives(specimen, limits, catalogue);
}

} // namespace matula::scenario
