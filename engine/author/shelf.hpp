#pragma once

#include "engine/author/physiology.hpp"
#include "engine/author/rules.hpp"
#include "engine/scoring/standards.hpp"

#include <memory>

namespace matula::assets {
struct World;
}

namespace matula::author {

/// What authoring goes by. Read once; afterwards only looked at, from any thread. World and standards must
/// outlive it.
struct Shelf {
  const assets::World* world = nullptr;
  const scoring::Standards* standards = nullptr;
  const scenario::Limits* limits = nullptr;
  Physiology physiology;
  ComposeRules compose;
  std::vector<Trap> traps;
  specimen::Specimen plain; ///< assets/plain_urine.toml
};

/// Reads assets/author; every problem is reported.
[[nodiscard]] tl::expected<std::shared_ptr<const Shelf>, scenario::Problems>
load_shelf(const assets::World& world, const scoring::Standards& standards,
           const std::filesystem::path& assets_folder);

} // namespace matula::author
