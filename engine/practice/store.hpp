#pragma once

#include "engine/generator/pattern.hpp"
#include "engine/generator/people.hpp"
#include "engine/learner/rules.hpp"
#include "engine/practice/rules.hpp"
#include "engine/reception/book.hpp"
#include "sim/specimen/specimen.hpp"

#include <memory>

namespace matula::assets {
struct World;
}
namespace matula::scoring {
struct Standards;
}

namespace matula::practice {

/// What unknowns are made from. Read once; afterwards only looked at, from any thread. World and standards
/// must outlive it.
struct Store {
  const assets::World* world = nullptr;
  const scoring::Standards* standards = nullptr;
  const reception::Book* book = nullptr;
  Rules rules;
  learner::Rules learning; ///< When a rule has faded.
  specimen::Specimen plain;
  generator::People people;
  std::vector<generator::Pattern> patterns; ///< Of deliveries.
};

/// Reads what belongs to practice under the assets folder; every problem is reported.
[[nodiscard]] tl::expected<std::shared_ptr<const Store>, scenario::Problems>
load_store(const assets::World& world, const scoring::Standards& standards,
           const std::filesystem::path& assets_folder);

} // namespace matula::practice
