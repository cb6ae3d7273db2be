#include "engine/desk/ground.hpp"

#include "engine/assets/world.hpp"
#include "engine/scoring/standards.hpp"

namespace matula::desk {

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

std::string Ground::reagent_caution(const std::string& key) const {
  const matter::Reagent* reagent = world_->catalogue.find_reagent(key);
  return reagent == nullptr ? std::string() : caution(reagent->caution);
}

std::vector<std::string> Ground::colour_words() const {
  std::vector<std::string> words;
  for (const auto& named : world_->thresholds.urine_colours) {
    words.push_back(named.word);
  }
  return words;
}

} // namespace matula::desk
