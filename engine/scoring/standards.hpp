#pragma once

#include "engine/procedure/recipe.hpp"
#include "engine/scoring/heard.hpp"
#include "engine/scoring/report.hpp"
#include "engine/scoring/rulebook.hpp"

namespace matula::sitting {
class Session;
}

namespace matula::scoring {

/// What work is held against: the marking rules and each test by the book. Read once.
struct Standards {
  Rulebook rules;
  std::map<std::string, procedure::Recipe> recipes; ///< By test.
};

/// Reads assets/scoring and assets/procedures; every problem of every file is reported.
[[nodiscard]] tl::expected<Standards, scenario::Problems>
load_standards(const std::filesystem::path& assets_folder);

/// As score() in report.hpp, with standards already read.
[[nodiscard]] Report score(const assets::World& world, const Standards& standards,
                           const scenario::Scenario& scenario, const std::vector<sitting::Event>& log);

/// The same for a caller that also wants the bench as the log leaves it: the log is played in `session`,
/// which must be fresh, and `heard` is told what came of every event.
[[nodiscard]] Report score(const assets::World& world, const Standards& standards,
                           const scenario::Scenario& scenario, const std::vector<sitting::Event>& log,
                           sitting::Session& session, const Heard& heard);

inline constexpr std::array<Ledger, 5> all_ledgers{Ledger::Reading, Ledger::Interpretation,
                                                   Ledger::Arithmetic, Ledger::Process, Ledger::Safety};

/// "reading", "interpretation", "arithmetic", "process", "safety"
[[nodiscard]] std::string to_word(Ledger ledger);

} // namespace matula::scoring
