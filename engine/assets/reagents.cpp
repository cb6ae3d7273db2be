#include "engine/assets/readers.hpp"

namespace matula::assets {

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
    reagent.drop_ml = row.number_or("drop_ml", {0.01, 0.2, "mL"}, reagent.drop_ml);
    reagent.grams_per_ml = row.number_or("grams_per_ml", {0.3, 10, "g/mL"}, reagent.grams_per_ml);
    reagent.caution = row.text_or("caution", "");
    reagent.waste = row.word_or("waste", wastes, "");
    reagent.hood = row.boolean_or("hood", false);
    reagent.flammable = row.boolean_or("flammable", false);
    reagent.source = row.text("source");
    check_new(row, reagent.key, catalogue.reagents);
    catalogue.reagents.push_back(reagent);
  }
}

} // namespace matula::assets
