#include "engine/assets/readers.hpp"

#include <algorithm>

namespace matula::assets {

void read_cautions(const std::filesystem::path& file, const matter::Catalogue& catalogue,
                   std::map<std::string, std::string>& cautions, scenario::Problems& problems) {
  strict::File toml(file);
  std::vector<std::string> keys{"flame",   "specimen", "hood",      "flammable", "bleach",
                                "cyanide", "waste",    "centrifuge"}; // The bench itself speaks of these.
  for (const matter::Reagent& reagent : catalogue.reagents) {
    if (!reagent.caution.empty()) {
      keys.push_back(reagent.caution);
    }
  }
  for (const strict::Table& row : toml.root().tables("caution")) {
    const std::string key = row.text("key");
    (void)row.text("source");
    if (!cautions.emplace(key, row.text("text")).second) {
      row.complain("key", "a key no other row has");
    }
  }
  std::sort(keys.begin(), keys.end());
  keys.erase(std::unique(keys.begin(), keys.end()), keys.end());
  for (const std::string& key : keys) {
    if (cautions.count(key) == 0) {
      toml.complain(0, 0, "no caution '" + key + "', which a bottle or the bench shows",
                    "a [[caution]] with that key");
    }
  }
  close(toml, problems);
}

} // namespace matula::assets
