#include "engine/assets/readers.hpp"

namespace matula::assets {

namespace {

const strict::Range moles{-1000, 1000, "mol"};
const strict::Range ph{0, 14, "pH"};
const strict::Range half{1e-9, 100, "mol/L"};

reaction::MassAction read_mass_action(const strict::Table& row, const matter::Catalogue& catalogue) {
  reaction::MassAction law;
  law.k = read_arrhenius(row);
  law.orders = read_amounts(row.table("orders"), catalogue, {0, 4, ""});
  law.oh_order = row.number_or("oh_order", {-3, 3, ""}, law.oh_order);
  law.reference_ph = row.number_or("reference_ph", ph, law.reference_ph);
  if (row.has("acid_pka")) {
    law.acid_pka = row.number("acid_pka", ph);
  }
  if (row.has("base_pka")) {
    law.base_pka = row.number("base_pka", ph);
  }
  if (const auto saturation = row.table_if_any("saturation")) {
    law.saturation = read_amounts(*saturation, catalogue, half);
  }
  if (const auto inhibitors = row.table_if_any("inhibitors")) {
    law.inhibitors = read_amounts(*inhibitors, catalogue, half);
  }
  return law;
}

reaction::SaturatingReduction read_reduction(const strict::Table& row, const matter::Catalogue& catalogue) {
  reaction::SaturatingReduction law;
  law.k = read_arrhenius(row);
  law.substrate = read_species_key(row, "substrate", catalogue);
  law.partner = read_species_key(row, "partner", catalogue);
  law.half_mol_per_l = row.number("half_mol_per_l", {1e-9, 10, "mol/L"});
  law.reference_ph = row.number("reference_ph", ph);
  return law;
}

} // namespace

void read_reactions(const strict::Table& root, const matter::Catalogue& catalogue,
                    reaction::Network& network) {
  for (const strict::Table& row : root.tables_or_none("reaction")) {
    reaction::Reaction reaction;
    reaction.key = row.text("key");
    if (row.word("law", {"mass_action", "saturating_reduction"}) == "mass_action") {
      reaction.law = read_mass_action(row, catalogue);
    } else {
      reaction.law = read_reduction(row, catalogue);
    }
    reaction.changes = read_amounts(row.table("changes"), catalogue, moles);
    reaction.water = row.number_or("water", moles, 0);
    reaction.oxygen = row.number_or("oxygen", moles, 0);
    reaction.source = row.text("source");
    check_new(row, reaction.key, network.reactions);
    network.reactions.push_back(reaction);
  }
}

} // namespace matula::assets
