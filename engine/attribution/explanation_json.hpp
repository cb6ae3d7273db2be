#pragma once

#include "engine/attribution/explanation.hpp"

#include <nlohmann/json_fwd.hpp>

namespace matula::attribution {

/// One object a reading: what was there, what would have been, each share and the words.
[[nodiscard]] nlohmann::json to_json(const std::vector<Explanation>& explanations);

/// What stands in a file of marks and what a program reads: the report, why each reading came out as it did,
/// whose case it is, and whether the case has changed since. Ends with a line break.
[[nodiscard]] std::string marks_text(const scoring::Report& report,
                                     const std::vector<Explanation>& explanations,
                                     const std::string& scenario_key, bool scenario_changed);

} // namespace matula::attribution
