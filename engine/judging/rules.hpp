#pragma once

#include "engine/scenario/problem.hpp"

#include <tl/expected.hpp>

#include <filesystem>

namespace matula::judging {

/// When what is shown. Values come from assets/records/judging.toml, where they are explained.
struct Rules {
  int agreement_from = 0;
  int bias_from = 0;
  int draws = 0;
  double coverage = 0.95;
  int students_from = 0;
  int discrimination_from = 0;
  int right_from = 0; ///< Per mille.
  double hard_below = 0;
  double easy_above = 1;
  double flat_below = 0;
  double best_share = 0.27;
  int sittings_at_once = 0; ///< Up to which the items of many cases are worked out at one look.
  int most_readings = 0;
  int mark_from = 0; ///< Per mille, as the three below.
  int mark_to = 0;
  int mark_step = 1;
  int borderline = 0;
};

[[nodiscard]] tl::expected<Rules, scenario::Problems> load_rules(const std::filesystem::path& assets_folder);

} // namespace matula::judging
