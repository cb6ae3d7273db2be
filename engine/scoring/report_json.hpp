#pragma once

#include "engine/scoring/report.hpp"

#include <nlohmann/json_fwd.hpp>

#include <string>

namespace matula::scoring {

/// Ledgers, marks, tubes and debrief.
[[nodiscard]] nlohmann::json to_json(const Report& report);

} // namespace matula::scoring
