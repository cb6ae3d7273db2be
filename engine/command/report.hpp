#pragma once

#include "engine/attribution/explanation_json.hpp"
#include "engine/scoring/report_json.hpp"
#include "sim/bench/scene.hpp"

#include <nlohmann/json_fwd.hpp>

#include <iosfwd>
#include <string>
#include <vector>

namespace matula::command {

/// One vessel, float or tool as a person would describe it.
struct SeenThing {
  std::string name;
  std::string colour_hex;    ///< Mean over the white card, sRGB.
  double print_contrast = 1; ///< Share of a printed line's contrast left behind it.
  std::string words;
};

/// Describes every vessel with something in it, from looks alone. `white` and `printed` are the same bench
/// against two cards.
[[nodiscard]] std::vector<SeenThing> describe(const bench::Scene& white, const bench::Scene& printed);

using scoring::to_json;
[[nodiscard]] nlohmann::json to_json(const std::vector<SeenThing>& things);

/// Ledger by ledger: what was earned, for each lost mark its sentence, and why each reading came out so.
void print_report(const scoring::Report& report, const std::vector<attribution::Explanation>& why,
                  std::ostream& out);
void print_seen(const std::vector<SeenThing>& things, std::ostream& out);

} // namespace matula::command
