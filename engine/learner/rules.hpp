#pragma once

#include "engine/scenario/problem.hpp"
#include "engine/statistics/boundaries.hpp"
#include "engine/statistics/memory.hpp"

#include <tl/expected.hpp>

#include <array>
#include <filesystem>
#include <string>
#include <vector>

namespace matula::learner {

/// When a learner is told something. Values come from assets/learning/rules.toml, where they are explained.
struct Rules {
  statistics::SpeakingRule speaking;
  int latest_readings = 0;
  int shift_from = 0;
  int lines_from = 0;

  int confusion_from = 0;
  int least_swaps = 0;
  double least_swap_chance = 0;
  std::vector<std::string> colours; ///< Six, of the grades of reduced copper.

  int latest_answers = 0;
  int right_from = 0;
  int recent = 0;
  int before = 0;
  int mastered_from = 0;
  double mastered_chance = 0;
  int fault_from = 0;
  int missed_from = 0;
  int due_costs = 0;
  int most_sentences = 0;

  std::vector<std::string> fading_skills; ///< Those made of rules.
  statistics::MemoryRule memory;
  double due_below = 0;
  statistics::KnowledgeRule knowledge;
  double known_from = 0;
};

/// Reads assets/learning/rules.toml under the assets folder; every problem is reported.
[[nodiscard]] tl::expected<Rules, scenario::Problems> load_rules(const std::filesystem::path& assets_folder);

} // namespace matula::learner
