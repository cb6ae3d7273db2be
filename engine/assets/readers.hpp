#pragma once

#include "engine/assets/world.hpp"
#include "engine/strict/table.hpp"

#include <filesystem>
#include <string>
#include <utility>
#include <vector>

namespace matula::assets {

// One reader a kind of file. Each adds what it read and every problem it found; references are checked
// against what was read before. Rows of chemistry: each reads one kind of row out of a file that may hold
// others. `folder` is that of the chemistry files.
void read_species(const strict::Table& root, const std::filesystem::path& folder,
                  matter::Catalogue& catalogue, scenario::Problems& problems);
void read_particles(const strict::Table& root, const std::filesystem::path& folder,
                    matter::Catalogue& catalogue, scenario::Problems& problems);
void read_heavy(const strict::Table& root, matter::Catalogue& catalogue);
void read_reagents(const strict::Table& root, matter::Catalogue& catalogue);
void read_reactions(const strict::Table& root, const matter::Catalogue& catalogue,
                    reaction::Network& network);
void read_precipitations(const strict::Table& root, const matter::Catalogue& catalogue,
                         reaction::Network& network);
void read_breakdowns(const strict::Table& root, const matter::Catalogue& catalogue,
                     reaction::Network& network);
/// Every file of the chemistry folder: the five general ones, then one file a subject in alphabetical order.
/// All species are read before all particles, these before all bottles, and so on, so that any file may name
/// what another one holds.
void read_chemistry(const std::filesystem::path& folder, matter::Catalogue& catalogue,
                    reaction::Network& network, scenario::Problems& problems);

/// Organisms, cells, inhibitors and the exchange with the air, from the folder `ageing`.
void read_ageing(const std::filesystem::path& folder, const matter::Catalogue& catalogue, ageing::Laws& laws,
                 scenario::Problems& problems);
void read_optics(const std::filesystem::path& folder, appearance::OpticsTables& optics,
                 scenario::Problems& problems);
void read_thresholds(const std::filesystem::path& file, reading::Thresholds& thresholds,
                     scenario::Problems& problems);
void read_vessels(const std::filesystem::path& file, std::map<std::string, column::VesselShape>& shapes,
                  scenario::Problems& problems);
void read_instruments(const std::filesystem::path& file, World& world, scenario::Problems& problems);
/// Refraction and surface activity of the species; for those without a row a general refraction.
void read_liquids(const std::filesystem::path& folder, matter::Catalogue& catalogue,
                  scenario::Problems& problems);
/// Refractometer, photometer, sulphur, centrifuge and filter paper.
void read_measuring(const strict::Table& root, World& world);
void read_papers(const std::filesystem::path& file, const matter::Catalogue& catalogue,
                 std::vector<paper::PaperKind>& papers, scenario::Problems& problems);
void read_cautions(const std::filesystem::path& file, const matter::Catalogue& catalogue,
                   std::map<std::string, std::string>& cautions, scenario::Problems& problems);
void read_bottle_decays(const std::filesystem::path& file, const matter::Catalogue& catalogue,
                        std::vector<bench::BottleDecay>& decays, scenario::Problems& problems);

/// Moves the file's problems (unknown keys included) to the others.
void close(strict::File& file, scenario::Problems& problems);

/// Amounts by species: a table whose keys are species. Unknown species are reported with the name probably
/// meant.
[[nodiscard]] reaction::Stoichiometry
read_amounts(const strict::Table& table, const matter::Catalogue& catalogue, const strict::Range& range);
[[nodiscard]] matter::SpeciesId read_species_key(const strict::Table& table, const std::string& key,
                                                 const matter::Catalogue& catalogue);
/// The particle a key names; the first one, with a complaint, where there is none of that name.
[[nodiscard]] matter::ParticleId read_particle_key(const strict::Table& table, const std::string& key,
                                                   const matter::Catalogue& catalogue);
[[nodiscard]] reaction::Arrhenius read_arrhenius(const strict::Table& table);

/// Names of a list of rows, for suggestions.
template <class Rows> [[nodiscard]] std::vector<std::string> keys_of(const Rows& rows) {
  std::vector<std::string> keys;
  keys.reserve(rows.size());
  for (const auto& row : rows) {
    keys.push_back(row.key);
  }
  return keys;
}

/// Reports a key that stands in the list already.
template <class Rows> void check_new(const strict::Table& table, const std::string& key, const Rows& rows) {
  for (const auto& row : rows) {
    if (row.key == key) {
      table.complain("key", "a key no other row has");
    }
  }
}

} // namespace matula::assets
