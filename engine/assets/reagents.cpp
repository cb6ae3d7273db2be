#include "engine/assets/readers.hpp"

#include "engine/strict/nearest.hpp"

namespace matula::assets {

namespace {

std::vector<std::pair<matter::ParticleId, double>> read_solids(const strict::Table& row,
                                                               const matter::Catalogue& catalogue) {
  constexpr double ml_per_l = 1000;
  std::vector<std::pair<matter::ParticleId, double>> solids;
  const auto table = row.table_if_any("solids_g_per_l");
  for (const std::string& key : table ? table->keys() : std::vector<std::string>{}) {
    const auto kind = catalogue.find_particle(key);
    if (!kind) {
      table->complain(key, "the key of a particle");
      continue;
    }
    solids.emplace_back(*kind, table->number(key, {0, 500, "g/L"}) / ml_per_l);
  }
  return solids;
}

/// powder = { solid, g_per_ml, size_class }.
std::optional<matter::Powder> read_powder(const strict::Table& row, const matter::Catalogue& catalogue) {
  const auto table = row.table_if_any("powder");
  if (!table) {
    return std::nullopt;
  }
  matter::Powder powder;
  const std::string name = table->text("solid");
  const auto solid = catalogue.find_particle(name);
  if (!solid) {
    table->complain("solid", "a particle; " + strict::suggestion(name, keys_of(catalogue.particles)));
    return std::nullopt;
  }
  powder.solid = *solid;
  powder.g_per_ml = table->number("g_per_ml", {0.05, 5, "g/mL"});
  powder.size_class =
      static_cast<std::size_t>(table->integer_or("size_class", {0, matter::size_bins - 1.0, ""}, 0));
  return powder;
}

} // namespace

/// The one liquid that sinks under water without mixing.
void read_heavy(const strict::Table& root, matter::Catalogue& catalogue) {
  const auto row = root.table_if_any("heavy_liquid");
  if (!row) {
    return;
  }
  matter::HeavyLiquid& heavy = catalogue.heavy;
  if (!heavy.key.empty()) {
    row->complain("key", "nothing more: the shelf has one heavy liquid already");
  }
  heavy.key = row->text("key");
  heavy.label = row->text("label");
  heavy.density_kg_m3 = row->number("density_kg_m3", {1050, 5000, "kg/m3"});
  heavy.boiling_c = row->number("boiling_c", {30, 100, "degrees C"});
  heavy.heat_capacity_j_per_ml_k = row->number("heat_capacity_j_per_ml_k", {0.5, 5, "J/mL/K"});
  heavy.latent_heat_j_per_ml = row->number("latent_heat_j_per_ml", {100, 3000, "J/mL"});
  heavy.diffusivity_m2_s = row->number("diffusivity_m2_s", {1e-11, 1e-8, "m2/s"});
  heavy.odour = row->text_or("odour", "");
  heavy.source = row->text("source");
}

void read_reagents(const strict::Table& root, matter::Catalogue& catalogue) {
  constexpr double mol_per_mmol = 1e-3;
  const std::vector<std::string> wastes{"",        "acid",          "ammonia",  "bleach", "heavy_metal",
                                        "solvent", "nitroprusside", "biohazard"};
  for (const strict::Table& row : root.tables_or_none("reagent")) {
    matter::Reagent reagent;
    reagent.key = row.text("key");
    reagent.label = row.text("label");
    reagent.mol_per_l = read_amounts(row.table("mmol_per_l"), catalogue, {0, 70000, "mmol/L"});
    for (auto& [id, amount] : reagent.mol_per_l) {
      amount *= mol_per_mmol;
    }
    reagent.solids_g_per_ml = read_solids(row, catalogue);
    reagent.powder = read_powder(row, catalogue);
    reagent.drop_ml = row.number_or("drop_ml", {0.01, 0.2, "mL"}, reagent.drop_ml);
    reagent.grams_per_ml = row.number_or("grams_per_ml", {0.3, 10, "g/mL"}, reagent.grams_per_ml);
    reagent.caution = row.text_or("caution", "");
    reagent.waste = row.word_or("waste", wastes, "");
    reagent.hood = row.boolean_or("hood", false);
    reagent.flammable = row.boolean_or("flammable", false);
    reagent.solvent = row.text_or("solvent", "");
    if (!reagent.solvent.empty() && reagent.solvent != catalogue.heavy.key) {
      row.complain("solvent", "a [heavy_liquid]; leave it out for water");
    }
    reagent.source = row.text("source");
    check_new(row, reagent.key, catalogue.reagents);
    catalogue.reagents.push_back(reagent);
  }
}

} // namespace matula::assets
