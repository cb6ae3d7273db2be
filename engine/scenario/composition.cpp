#include "engine/scenario/parts.hpp"

namespace matula::scenario {

namespace {

using Amounts = std::vector<std::pair<std::string, double>>;

/// Salts are kept in mmol/L, everything that laboratories weigh in mg/dL, however it was written.
void read_dissolved(const strict::Table& specimen, const Limits& limits, const matter::Catalogue& catalogue,
                    specimen::Specimen& made) {
  constexpr double mg_dl_per_mmol_l_and_g_mol = 0.1;
  const strict::Table table = specimen.table("dissolved");
  for (const Limit& limit : limits.dissolved) {
    const auto id = catalogue.find_species(limit.key);
    if (!id || !table.has(limit.key)) {
      continue;
    }
    const double molar_mass = catalogue.species[*id].molar_mass_g_per_mol;
    const auto mmol_per_l = read_quantity(table, limit.key, dissolved_measure(limit, molar_mass));
    if (!mmol_per_l) {
      continue;
    }
    if (limit.units == Limit::Units::Amount) {
      made.mmol_per_l.emplace_back(limit.key, *mmol_per_l);
    } else {
      made.mg_per_dl.emplace_back(limit.key, *mmol_per_l * molar_mass * mg_dl_per_mmol_l_and_g_mol);
    }
  }
}

Amounts read_solids(const strict::Table& specimen, const Limits& limits, const matter::Catalogue& catalogue) {
  Amounts amounts;
  const auto table = specimen.table_if_any("solids");
  if (!table) {
    return amounts;
  }
  for (const Limit& limit : limits.solids) {
    if (!catalogue.find_particle(limit.key) || !table->has(limit.key)) {
      continue;
    }
    if (const auto mg_per_l = read_quantity(*table, limit.key, solid_measure(limit))) {
      amounts.emplace_back(limit.key, *mg_per_l);
    }
  }
  return amounts;
}

} // namespace

specimen::Specimen read_specimen(const strict::Table& root, const Limits& limits,
                                 const matter::Catalogue& catalogue) {
  const strict::Table table = root.table("specimen");
  specimen::Specimen specimen;
  specimen.volume_ml =
      read_quantity(table, "volume", range_measure(limits, "volume")).value_or(specimen.volume_ml);
  read_keeping(table, limits, catalogue, specimen);
  if (specimen.life.empty() || table.has("temperature")) { // A way to the bench sets it by itself.
    specimen.temperature_c = read_quantity(table, "temperature", range_measure(limits, "temperature"))
                                 .value_or(specimen.temperature_c);
  }
  specimen.target_ph = table.number("ph", limits.ranges.at("ph"));
  specimen.urochrome_a420 = table.number("yellow", limits.ranges.at("yellow"));
  specimen.stood_hours = quantity_or(table, "stood", range_measure(limits, "stood"), 0);
  read_dissolved(table, limits, catalogue, specimen);
  specimen.particles_mg_per_l = read_solids(table, limits, catalogue);
  return specimen;
}

} // namespace matula::scenario
