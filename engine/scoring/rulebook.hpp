#pragma once

#include "engine/scenario/problem.hpp"
#include "engine/scoring/chain.hpp"
#include "engine/scoring/ordinal.hpp"

#include <tl/expected.hpp>

#include <array>
#include <filesystem>
#include <limits>
#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace matula::scoring {

/// How bad a fault of procedure is.
enum class Rank { Note, Minor, Major, Invalidating };

/// A fact of the learner's own work compared with a range; the sentences are templates (see explain.hpp).
struct Rule {
  std::string key;
  std::string part; ///< "look", "gravity", "heat", "ssa", "benedict"; "safety" for safety rules.
  std::string fact;
  double min = -std::numeric_limits<double>::infinity();
  double max = std::numeric_limits<double>::infinity();
  Rank rank = Rank::Minor;
  int marks = 0;     ///< Safety rules only.
  bool stop = false; ///< Safety rules only: fails the sitting.
  std::string label;
  std::string below;
  std::string above;
  std::string source;
};

/// One graded test: how it is recognised and weighed.
struct TestRule {
  std::string key; ///< "heat", "ssa", "benedict"
  std::string label;
  reading::Scale scale = reading::Scale::HeatCloud;
  std::vector<std::string> reagents;
  std::vector<double> strengths; ///< Of each reagent, relative to the one the recipe is written for.
  OrdinalRule ordinal;
  std::array<Span, reading::grade_count> grade_g_per_dl{};
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

struct Rulebook {
  std::vector<TestRule> tests;
  GravityRule gravity;
  ObservationRule observation;
  std::map<std::string, int> part_shares; ///< Of the procedure's marks.
  std::array<int, 4> rank_percent{};      ///< What a fault costs of its part, by Rank.
  std::vector<Rule> rules;
  std::vector<Rule> safety;

  [[nodiscard]] const TestRule* find_test(std::string_view key) const;
};

/// Reads assets/scoring/rules.toml under the assets folder; every problem is reported.
[[nodiscard]] tl::expected<Rulebook, scenario::Problems>
load_rulebook(const std::filesystem::path& assets_folder);
[[nodiscard]] tl::expected<Rulebook, scenario::Problems> parse_rulebook(std::string_view text,
                                                                        const std::string& file_name);

} // namespace matula::scoring
