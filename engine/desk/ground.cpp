#include "engine/desk/ground.hpp"

#include "engine/assets/world.hpp"
#include "engine/scoring/standards.hpp"
#include "engine/strict/table.hpp"

#include <algorithm>

namespace matula::desk {

namespace {

scenario::Problems read_bottle_labels(const std::filesystem::path& folder,
                                      std::map<std::string, std::string>& labels) {
  strict::File file(folder / "bottle_labels.toml");
  const strict::Table table = file.root().table("label");
  for (const std::string& key : table.keys()) {
    labels[key] = table.text(key);
  }
  return file.finish();
}

} // namespace

Ground::Ground() = default;
Ground::~Ground() = default;
Ground::Ground(Ground&&) noexcept = default;
Ground& Ground::operator=(Ground&&) noexcept = default;

tl::expected<Ground, scenario::Problems> Ground::load() {
  Ground ground;
  ground.folder_ = assets::folder();
  auto world = assets::load(ground.folder_);
  if (!world) {
    return tl::make_unexpected(world.error());
  }
  auto standards = scoring::load_standards(ground.folder_);
  if (!standards) {
    return tl::make_unexpected(standards.error());
  }
  auto problems = read_bottle_labels(ground.folder_, ground.bottle_labels_);
  if (!problems.empty()) {
    return tl::make_unexpected(std::move(problems));
  }
  ground.world_ = std::move(*world);
  ground.standards_ = std::make_unique<const scoring::Standards>(std::move(*standards));
  return ground;
}

const std::string& Ground::caution(const std::string& key) const {
  static const std::string none;
  const auto found = world_->cautions.find(key);
  return found == world_->cautions.end() ? none : found->second;
}

std::string Ground::reagent_label(const std::string& key) const {
  const matter::Reagent* reagent = world_->catalogue.find_reagent(key);
  return reagent == nullptr ? key : reagent->label;
}

std::string Ground::bottle_label(const std::string& key) const {
  const auto found = bottle_labels_.find(key);
  return found == bottle_labels_.end() ? reagent_label(key) : found->second;
}

std::string Ground::reagent_caution(const std::string& key) const {
  const matter::Reagent* reagent = world_->catalogue.find_reagent(key);
  return reagent == nullptr ? std::string() : caution(reagent->caution);
}

bool Ground::needs_hood(const std::string& reagent) const {
  const matter::Reagent* found = world_->catalogue.find_reagent(reagent);
  return found != nullptr && found->hood;
}

bool Ground::catches_fire(const std::string& reagent) const {
  const matter::Reagent* found = world_->catalogue.find_reagent(reagent);
  return found != nullptr && found->flammable;
}

double Ground::drop_ml(const std::string& reagent) const {
  const matter::Reagent* row = world_->catalogue.find_reagent(reagent);
  return row == nullptr ? matter::Reagent{}.drop_ml : row->drop_ml;
}

std::vector<std::string> Ground::odour_words() const {
  std::vector<std::string> words;
  for (const auto& species : world_->catalogue.species) {
    if (!species.odour.empty() && std::find(words.begin(), words.end(), species.odour) == words.end()) {
      words.push_back(species.odour);
    }
  }
  return words;
}

std::vector<std::string> Ground::colour_words() const {
  std::vector<std::string> words;
  for (const auto& named : world_->thresholds.urine_colours) {
    if (std::find(words.begin(), words.end(), named.word) == words.end()) {
      words.push_back(named.word); // One word may stand for several colours.
    }
  }
  return words;
}

} // namespace matula::desk
