#include "engine/author/shelf.hpp"

#include "engine/scoring/ladder.hpp"

namespace matula::author {

namespace {

/// Takes what was read, or notes what was wrong.
template <typename Read>
bool take(tl::expected<Read, scenario::Problems> read, Read& into, scenario::Problems& problems) {
  if (!read) {
    problems.insert(problems.end(), read.error().begin(), read.error().end());
    return false;
  }
  into = std::move(*read);
  return true;
}

} // namespace

tl::expected<std::shared_ptr<const Shelf>, scenario::Problems>
load_shelf(const assets::World& world, const scoring::Standards& standards,
           const std::filesystem::path& assets_folder) {
  auto shelf = std::make_shared<Shelf>();
  scenario::Problems problems;
  const auto& limits = scenario::shipped_limits();
  if (!limits) {
    return tl::make_unexpected(limits.error());
  }
  shelf->world = &world;
  shelf->standards = &standards;
  shelf->limits = &*limits;
  (void)take(load_physiology(assets_folder), shelf->physiology, problems);
  (void)take(load_compose_rules(assets_folder), shelf->compose, problems);
  (void)take(load_traps(assets_folder), shelf->traps, problems);
  (void)take(scoring::load_plain_urine(assets_folder), shelf->plain, problems);
  if (!problems.empty()) {
    return tl::make_unexpected(std::move(problems));
  }
  return std::shared_ptr<const Shelf>(std::move(shelf));
}

} // namespace matula::author
