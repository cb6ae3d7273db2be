#pragma once

#include "engine/scenario/scenario.hpp"

#include <string>

namespace matula::command {

/// A scenario file as it was understood, and its own text, whose remarks and order count.
struct HandWritten {
  scenario::Scenario scenario;
  std::string text;
};

[[nodiscard]] tl::expected<HandWritten, scenario::Problems>
read_hand_written(const std::string& file, const matter::Catalogue& catalogue);

} // namespace matula::command
