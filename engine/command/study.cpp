#include "engine/command/study.hpp"

namespace matula::command {

tl::expected<Study, scenario::Problems> load_study() {
  auto read = load_ground();
  if (!read) {
    return tl::make_unexpected(read.error());
  }
  Study study{std::make_unique<const Ground>(std::move(*read)), nullptr};
  auto shelf = author::load_shelf(*study.ground->world, study.ground->standards, assets::folder());
  if (!shelf) {
    return tl::make_unexpected(shelf.error());
  }
  study.shelf = std::move(*shelf);
  return study;
}

} // namespace matula::command
