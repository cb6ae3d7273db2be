#pragma once

#include "engine/scenario/problem.hpp"
#include "engine/sitting/event.hpp"

#include <tl/expected.hpp>

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

namespace matula::sitting {

/// Steps written by a person: one JSON object a line, as in a log but without a first line. "t" may be left
/// out (then the step is done when the one before is over), {"wait": 120} lets 120 s pass, blank lines and
/// lines that begin with # are passed over. Every problem is reported.
[[nodiscard]] tl::expected<std::vector<Event>, scenario::Problems> parse_steps(std::string_view text,
                                                                               const std::string& file_name);
[[nodiscard]] tl::expected<std::vector<Event>, scenario::Problems>
read_steps(const std::filesystem::path& file);

} // namespace matula::sitting
