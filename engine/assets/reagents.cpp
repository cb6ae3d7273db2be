#include "engine/assets/readers.hpp"

namespace matula::assets {

void read_reagents(const std::filesystem::path& file, matter::Catalogue& catalogue,
                   scenario::Problems& problems) {
  constexpr double mol_per_mmol = 1e-3;
  strict::File toml(file);
  for (const strict::Table& row : toml.root().tables("reagent")) {
    matter::Reagent reagent;
    reagent.key = row.text("key");
    reagent.label = row.text("label");
    reagent.mol_per_l = read_amounts(row.table("mmol_per_l"), catalogue, {0, 30000, "mmol/L"});
    for (auto& [id, amount] : reagent.mol_per_l) {
      amount *= mol_per_mmol;
    }
    reagent.drop_ml = row.number_or("drop_ml", {0.01, 0.2, "mL"}, reagent.drop_ml);
    reagent.caution = row.text_or("caution", "");
    reagent.source = row.text("source");
    check_new(row, reagent.key, catalogue.reagents);
    catalogue.reagents.push_back(reagent);
  }
  close(toml, problems);
}

} // namespace matula::assets
