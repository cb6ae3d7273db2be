#pragma once

#include "engine/procedure/procedure.hpp"
#include "engine/scenario/problem.hpp"
#include "engine/scoring/chain.hpp"
#include "engine/scoring/ordinal.hpp"

#include <tl/expected.hpp>

#include <array>
#include <filesystem>
#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace matula::scenario {
struct MarkingRules;
}

namespace matula::scoring {

using procedure::Rank;
using procedure::Rule;

/// A procedure with the weights its grades are marked by.
struct TestRule : procedure::Procedure {
  OrdinalRule ordinal;
};

struct GravityRule {
  std::array<int, 6> shares{}; ///< reading, zero, temperature, protein, glucose, corrected
  double division = 0.001;
  double protein_physical_per_g_dl = 0;
  double glucose_physical_per_g_dl = 0;
  std::vector<std::string> proteins; ///< Species keys counted as protein.
  std::vector<std::string> sugars;
};

struct ObservationRule {
  int neighbour_credit = 500; ///< Per mille.
  std::vector<std::string> colours;
  std::vector<std::string> clarities;
  std::vector<std::string> no_odour;
};

/// How feedback by replay tells what is worth saying. Values come from assets/scoring/rules.toml.
struct WhyRule {
  double visible_grades = 0.25;    ///< A change of a tube smaller than this is not seen,
  double visible_gravity = 0.0005; ///< nor one of a float's reading.
  double loose_ratio = 1.5; ///< An amount so many times the recipe's, or its part, is looked at in any case,
  double tight_ratio = 1.1; ///< and beyond this when it broke a rule.
  double mixed_ratio = 2;   ///< Mixing shorter by more than this is looked at.
  double settled_s = 600;   ///< A specimen mixed longer ago has settled,
  double stale_s = 3600;    ///< one that stood longer at the bench could have been examined earlier,
  double fresh_s = 600;     ///< say after this.
  double cold_k = 5;        ///< Farther from the room's temperature a specimen is cold or hot.
  double short_wait_s = 30; ///< Waits of a recipe shorter than this do not count,
  double long_wait_s = 600; ///< nor pauses of a learner.
  int exact_up_to = 5;      ///< With more deviations that matter the shares come from orders drawn by lot,
  int orders = 16;          ///< so many.
};

/// When a sitting is passed: all of it, none made up for by another. No safety stop goes without saying.
struct PassRule {
  int mark = 600;          ///< Mean of the graded readings, per mille, at least.
  int missed_findings = 0; ///< At most.
};

struct Rulebook {
  std::vector<TestRule> tests;
  OrdinalRule ordinal; ///< What all graded tests share.
  GravityRule gravity;
  ObservationRule observation;
  WhyRule why;
  PassRule pass;
  std::map<std::string, int> part_shares; ///< Of the procedure's marks.
  std::array<int, 4> rank_percent{};      ///< What a fault costs of its part, by Rank.
  std::vector<Rule> rules;
  std::vector<Rule> safety;

  /// The same with what a scenario's own table [marking] says instead.
  [[nodiscard]] Rulebook with(const scenario::MarkingRules& own) const;
  [[nodiscard]] const TestRule* find_test(std::string_view key) const;
};

/// Reads assets/scoring/rules.toml and assets/procedures under the assets folder; every problem is reported.
[[nodiscard]] tl::expected<Rulebook, scenario::Problems>
load_rulebook(const std::filesystem::path& assets_folder);
/// The rules that belong to no one test, without the tests.
[[nodiscard]] tl::expected<Rulebook, scenario::Problems> parse_rulebook(std::string_view text,
                                                                        const std::string& file_name);

} // namespace matula::scoring
