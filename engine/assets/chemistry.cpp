#include "engine/assets/readers.hpp"

#include "engine/strict/disk.hpp"

#include <algorithm>
#include <memory>

namespace matula::assets {

namespace {

const std::vector<std::string> general{"species", "particles", "reagents", "reactions", "precipitations"};

std::vector<std::filesystem::path> chemistry_files(const std::filesystem::path& folder) {
  std::vector<std::filesystem::path> subjects;
  for (const auto& file :
       strict::files_in(folder, ".toml")) { // A missing folder shows as five missing files.
    if (std::find(general.begin(), general.end(), file.stem().string()) == general.end()) {
      subjects.push_back(file);
    }
  }
  std::vector<std::filesystem::path> files;
  files.reserve(general.size() + subjects.size());
  for (const std::string& name : general) {
    files.push_back(folder / (name + ".toml"));
  }
  files.insert(files.end(), subjects.begin(), subjects.end());
  return files;
}

} // namespace

void read_chemistry(const std::filesystem::path& folder, matter::Catalogue& catalogue,
                    reaction::Network& network, scenario::Problems& problems) {
  std::vector<std::unique_ptr<strict::File>> files;
  for (const std::filesystem::path& file : chemistry_files(folder)) {
    files.push_back(std::make_unique<strict::File>(file));
  }
  for (const auto& file : files) {
    read_species(file->root(), folder, catalogue, problems);
  }
  for (const auto& file : files) {
    read_particles(file->root(), folder, catalogue, problems);
  }
  for (const auto& file : files) {
    read_heavy(file->root(), catalogue);
  }
  for (const auto& file : files) {
    read_reagents(file->root(), catalogue);
  }
  for (const auto& file : files) {
    read_reactions(file->root(), catalogue, network);
  }
  for (const auto& file : files) {
    read_precipitations(file->root(), catalogue, network);
  }
  for (const auto& file : files) {
    read_breakdowns(file->root(), catalogue, network);
  }
  for (const auto& file : files) {
    close(*file, problems);
  }
}

} // namespace matula::assets
