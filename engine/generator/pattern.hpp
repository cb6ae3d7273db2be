#pragma once

#include "engine/generator/handing.hpp"
#include "engine/scenario/scenario.hpp"
#include "engine/strict/table.hpp"

#include <tl/expected.hpp>

#include <filesystem>
#include <string>
#include <vector>

namespace matula::generator {

/// How much of a substance a patient of the pattern passes.
struct Amount {
  std::string key;
  double typical = 0;
  std::string unit;   ///< As written in the scenario; empty for a bare number.
  double spread = 0;  ///< Deviation of the logarithm between patients.
  double follows = 1; ///< Power of the dilution factor: 1 for solutes, 0 for what the bladder adds.
};

/// `[specimen.NAME]`: dissolved, solids, cells, infection, contamination.
struct Section {
  std::string name;
  std::vector<Amount> amounts;
};

/// What must be true of every variant; see consistency.hpp.
struct Bounds {
  strict::Range chloride_mmol_per_l;
  strict::Range gravity;                ///< 20/20.
  strict::Range osmolality_per_gravity; ///< mOsm/kg for each 1.000 of (gravity - 1).
};

/// Who the patient may be.
struct Who {
  double youngest = 20;
  double oldest = 70;
  std::string age_unit; ///< "years", "days" or "weeks".
  std::string age_note; ///< Put behind age and sex: "38 weeks pregnant"; may be empty.
  std::string sex;      ///< "female", "male" or "any".
  std::vector<std::string> wards;
  std::vector<std::string> requests;
  std::vector<std::string> notes;
};

/// A kind of case: the mean composition of its urine, how patients differ, and what is asked. One file of
/// assets/patterns.
struct Pattern {
  std::string key;
  std::string level;
  int seed = 1; ///< Of the typical variant's scenario.
  std::vector<std::string> titles;
  std::vector<std::string> stories;
  std::string debrief;
  Who who;
  Measured volume_ml;
  Measured temperature_c; ///< Only where no way says it.
  Measured ph;
  Measured stood_h; ///< Only where neither a way nor a delivery says it.
  Measured room_c;
  Amount yellow;
  double dilution_spread = 0;
  std::vector<std::pair<std::string, std::string>>
      as_written; ///< Further lines of [specimen], key and value.
  std::vector<Section> sections;
  Way way;
  std::optional<Handing> handing;
  Bounds bounds;
  std::vector<double> zero_errors;
  std::string calibration;
  std::vector<std::string> reagents;
  std::vector<std::string> tests;
  std::vector<scenario::Decision> decisions;
  std::string verbatim; ///< Further sections, copied to the end of the scenario.
};

/// Reads one pattern file; every problem is reported.
[[nodiscard]] tl::expected<Pattern, scenario::Problems> read_pattern(const std::filesystem::path& file);

/// [typical, deviation, lowest, highest] under `key`, every number within `range`.
[[nodiscard]] Measured read_measured(const strict::Table& table, const std::string& key,
                                     const strict::Range& range);

/// Keys of all patterns of a folder, sorted.
[[nodiscard]] std::vector<std::string> pattern_keys(const std::filesystem::path& folder);

} // namespace matula::generator
