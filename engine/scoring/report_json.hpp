#pragma once

#include "engine/scoring/report.hpp"

#include <nlohmann/json_fwd.hpp>

#include <string>

namespace matula::scoring {

/// Ledgers, marks, tubes and debrief.
[[nodiscard]] nlohmann::json to_json(const Report& report);

/// What stands in a file of marks and what a program reads: the report, whose case it is, and whether the
/// case has changed since. Ends with a line break.
[[nodiscard]] std::string marks_text(const Report& report, const std::string& scenario_key,
                                     bool scenario_changed);

} // namespace matula::scoring
