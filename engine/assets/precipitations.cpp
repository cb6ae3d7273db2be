#include "engine/assets/readers.hpp"
#include "sim/reaction/solubility.hpp"

namespace matula::assets {

namespace {

const std::vector<std::string> laws{"oxide",     "acid_protein", "isoelectric", "hot_window",
                                    "weak_acid", "ion_product",  "carried"};

/// The law's numbers; its agent, when it has one, is put last.
std::vector<double> read_parameters(const strict::Table& row, const matter::Catalogue& catalogue,
                                    const std::string& law, std::size_t formula_length) {
  std::vector<double> parameters = row.numbers("parameters", {-1e6, 1e6, ""});
  const bool agent = law == "acid_protein";
  if (agent) {
    parameters.push_back(static_cast<double>(read_species_key(row, "agent", catalogue)));
  }
  const bool carrier = law == "carried";
  if (carrier) {
    parameters.push_back(static_cast<double>(read_particle_key(row, "carrier", catalogue)));
  }
  const int wanted = reaction::parameter_count(law, formula_length);
  if (static_cast<int>(parameters.size()) != wanted) {
    row.complain("parameters",
                 std::to_string(wanted - (agent || carrier ? 1 : 0)) + " numbers for the law " + law);
  }
  return parameters;
}

reaction::Precipitation read_row(const strict::Table& row, const matter::Catalogue& catalogue) {
  reaction::Precipitation solid;
  solid.key = row.text("key");
  solid.solid = read_particle_key(row, "solid", catalogue);
  solid.formula = read_amounts(row.table("formula"), catalogue, {0, 100, "mol"});
  solid.law = row.word("law", laws);
  solid.parameters = read_parameters(row, catalogue, solid.law, solid.formula.size());
  solid.growth = read_arrhenius(row.table("growth"));
  solid.nucleation_bin = row.integer_or("nucleation_bin", {0, matter::size_bins - 1.0, ""}, 0);
  solid.nuclei_s_per_mol = row.number_or("nuclei_s_per_mol", {0, 1e30, ""}, solid.nuclei_s_per_mol);
  solid.begins_above = row.number_or("begins_above", {1, 1e6, ""}, solid.begins_above);
  solid.stir_gain_s = row.number_or("stir_gain_s", {0, 1e3, "s"}, solid.stir_gain_s);
  solid.dissolving_per_s = row.number_or("dissolving_per_s", {0, 1e3, "/s"}, solid.dissolving_per_s);
  solid.dissolves = row.boolean_or("dissolves", solid.dissolves);
  solid.water = row.number_or("water", {-100, 100, "mol"}, 0);
  solid.protons = row.number_or("protons", {-100, 100, "mol"}, 0);
  solid.source = row.text("source");
  return solid;
}

} // namespace

void read_precipitations(const strict::Table& root, const matter::Catalogue& catalogue,
                         reaction::Network& network) {
  for (const strict::Table& row : root.tables_or_none("precipitation")) {
    const reaction::Precipitation solid = read_row(row, catalogue);
    check_new(row, solid.key, network.precipitations);
    network.precipitations.push_back(solid);
  }
}

} // namespace matula::assets
