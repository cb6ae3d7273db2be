#pragma once

#include "engine/sitting/fields.hpp"

#include <optional>
#include <string>
#include <vector>

namespace matula::sitting {

/// One line of the log, without its end: {"t":12.5,"do":"pour","from":"specimen",...}. Numbers keep every
/// bit.
[[nodiscard]] std::string to_line(const Event& event);

/// Verbs that "do" may hold.
[[nodiscard]] const std::vector<std::string>& verbs();

/// Whether "t" must stand in the line (log) or may be left out (steps).
enum class Time { Needed, Optional };

/// Reads one object. Anything wrong is added to `wrongs`, and then nothing is returned.
[[nodiscard]] std::optional<Event> read_event(const nlohmann::json& object, Time time,
                                              std::vector<Wrong>& wrongs);

} // namespace matula::sitting
