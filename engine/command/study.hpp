#pragma once

#include "engine/author/shelf.hpp"
#include "engine/command/replayed.hpp"

#include <memory>

namespace matula::command {

/// What the verbs for authors go by.
struct Study {
  std::unique_ptr<const Ground> ground; ///< The shelf points into it.
  std::shared_ptr<const author::Shelf> shelf;
};

[[nodiscard]] tl::expected<Study, scenario::Problems> load_study();

} // namespace matula::command
