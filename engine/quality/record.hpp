#pragma once

#include "engine/scenario/problem.hpp"

#include <tl/expected.hpp>

#include <filesystem>
#include <string>
#include <vector>

namespace matula::quality {

/// One reading of one control: a line of the control record.
struct Entry {
  int day = 1;          ///< Working day, from 1; never before the line above.
  std::string test;     ///< "benedict", "specific_gravity"
  std::string control;  ///< Key of the control.
  std::string reading;  ///< As read: a grade word or a number.
  std::string bottle;   ///< Lot or opening day, as written on it; may be empty.
  std::string decision; ///< "accept" or "reject".
  std::string remark;   ///< What was done about it; may be empty.
};

/// Adds a line at the end of the record; what stands there is never changed. The problem in words, or empty:
/// a day before the last line's, an unknown decision, a rejection without a remark, a file that cannot be
/// written.
[[nodiscard]] std::string append(const std::filesystem::path& file, const Entry& entry);

/// Reads a record, one JSON object a line; every problem is reported. A file that is not there is an empty
/// record.
[[nodiscard]] tl::expected<std::vector<Entry>, scenario::Problems>
read_record(const std::filesystem::path& file);

} // namespace matula::quality
