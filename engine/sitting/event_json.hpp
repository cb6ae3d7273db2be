#pragma once

#include "engine/scenario/problem.hpp"
#include "engine/sitting/event.hpp"

#include <tl/expected.hpp>

#include <string>
#include <string_view>

namespace matula::sitting {

/// One line of a log or of a steps file, without the line break: a JSON object with "t" (bench seconds), "do"
/// (the word of the action, "record" or "finish") and the action's own fields.
[[nodiscard]] std::string to_line(const Event& event);

/// Reads such a line. Every problem in the line is reported; unknown words and fields are refused. A missing
/// "t" means "as soon as the last event is over" and reads as 0.
[[nodiscard]] tl::expected<Event, scenario::Problems> from_line(std::string_view line,
                                                                const std::string& file, int line_number);

} // namespace matula::sitting
