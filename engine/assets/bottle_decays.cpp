#include "engine/assets/readers.hpp"

namespace matula::assets {

void read_bottle_decays(const std::filesystem::path& file, const matter::Catalogue& catalogue,
                        std::vector<bench::BottleDecay>& decays, scenario::Problems& problems) {
  strict::File toml(file);
  for (const strict::Table& row : toml.root().tables("decay")) {
    bench::BottleDecay decay;
    decay.reagent = row.word("reagent", keys_of(catalogue.reagents));
    decay.loses = read_species_key(row, "loses", catalogue);
    decay.half_life_days = row.number("half_life_days", {0.01, 1e5, "d"});
    if (const auto gains = row.table_if_any("gains")) {
      decay.gains = read_amounts(*gains, catalogue, {0, 10, "mol"});
    }
    decay.source = row.text("source");
    decays.push_back(decay);
  }
  close(toml, problems);
}

} // namespace matula::assets
