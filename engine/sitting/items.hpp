#pragma once

#include "engine/sitting/event.hpp"

#include <string>
#include <vector>

namespace matula::scenario {
struct Scenario;
}

namespace matula::sitting {

/// Items of the worksheet other than decisions.
[[nodiscard]] const std::vector<std::string>& worksheet_items();

/// Aids that were taken while the sitting went on, written between its lines: "aid.guide" (led through the
/// case), "aid.text" (size of the letters), "aid.still" (nothing moves), "aid.hues" (colours named in words).
/// They cost nothing.
[[nodiscard]] const std::vector<std::string>& aid_items();

/// Why the worksheet has no such line ("" when it has): for files, without a scenario at hand.
[[nodiscard]] std::string unknown_item(const std::string& item);

/// Why this entry cannot stand on the worksheet of this scenario; "" when it can.
[[nodiscard]] std::string refuse_record(const scenario::Scenario& scenario, const Record& record);

} // namespace matula::sitting
