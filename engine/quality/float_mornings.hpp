#pragma once

#include "engine/quality/float_check.hpp"
#include "engine/scenario/problem.hpp"

#include <tl/expected.hpp>

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace matula::instrument {
struct Urinometer;
}

namespace matula::quality {

/// One morning of a float in distilled water.
struct FloatMorning {
  double water_c = 20;
  double zero_error = 0; ///< Of the float that day, as nobody sees it.
};

/// A float that is tried every morning for some days.
struct FloatSeries {
  std::string key;
  std::string title;
  std::string story;
  double calibration_c = 20;
  std::vector<FloatMorning> mornings;
  std::string remedy; ///< Shown at the end.
};

/// Reads assets/quality/floats.toml under the assets folder.
[[nodiscard]] tl::expected<std::vector<FloatSeries>, scenario::Problems>
load_floats(const std::filesystem::path& assets_folder);

/// Where the float stands in distilled water that morning, by Archimedes, to half a division.
[[nodiscard]] double morning_reading(const FloatSeries& series, const FloatMorning& morning,
                                     instrument::Urinometer urinometer);

/// "good", "correct", "discard"
[[nodiscard]] std::string to_word(FloatVerdict verdict);

/// What was written in the record for a morning.
struct FloatEntry {
  std::optional<double>
      error; ///< To take off every reading of the day: +0.002; a reading (1.002) counts too.
  FloatVerdict decision = FloatVerdict::Good;
};

struct FloatJudged {
  bool error_right = false;
  bool decision_right = false; ///< Judged from the learner's own error where one was written.
  std::string words;
};

/// The error by what the float shows, the decision by the error the learner wrote.
[[nodiscard]] FloatJudged judge_float(double reading, double water_c, double calibration_c,
                                      const FloatEntry& entry);

} // namespace matula::quality
