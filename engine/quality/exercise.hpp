#pragma once

#include "engine/quality/series.hpp"

namespace matula::quality {

[[nodiscard]] tl::expected<std::vector<Exercise>, scenario::Problems>
load_exercises(const std::filesystem::path& assets_folder, const std::vector<Control>& controls,
               const matter::Catalogue& catalogue);

/// What a learner answers: on which day to stop (0: never) and by which rule.
struct Answer {
  int day = 0;
  Rule rule = Rule::OneThreeS;
};

struct Judged {
  bool day_right = false;
  bool rule_right = false; ///< One of the rules that reject on the day to stop.
  std::string words;       ///< Why, for the learner.
};

[[nodiscard]] Judged judge(const Exercise& exercise, const Series& series, const Answer& answer);

} // namespace matula::quality
