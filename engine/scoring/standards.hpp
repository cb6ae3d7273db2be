#pragma once

#include "engine/scoring/recipe.hpp"
#include "engine/scoring/report.hpp"
#include "engine/scoring/rulebook.hpp"

namespace matula::scoring {

/// What work is held against: the marking rules and each test by the book. Read once.
struct Standards {
  Rulebook rules;
  std::map<std::string, Recipe> recipes; ///< By test.
};

/// Reads assets/scoring and assets/recipes; every problem of every file is reported.
[[nodiscard]] tl::expected<Standards, scenario::Problems>
load_standards(const std::filesystem::path& assets_folder);

/// As score() in report.hpp, with standards already read.
[[nodiscard]] Report score(const assets::World& world, const Standards& standards,
                           const scenario::Scenario& scenario, const std::vector<sitting::Event>& log);

inline constexpr std::array<Ledger, 5> all_ledgers{Ledger::Reading, Ledger::Interpretation,
                                                   Ledger::Arithmetic, Ledger::Process, Ledger::Safety};

/// "reading", "interpretation", "arithmetic", "process", "safety"
[[nodiscard]] std::string to_word(Ledger ledger);

} // namespace matula::scoring
