#pragma once

#include "engine/desk/float_book.hpp"

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace matula::desk {

/// What was done with the record of one float: a morning written, or the record begun afresh.
struct FloatLogLine {
  std::string series; ///< Key.
  bool afresh = false;
  std::optional<double> error;
  FloatDecision decision = FloatDecision::Use;
};

/// Every line of the file that can be read, oldest first. A file that is not there is an empty one; a line
/// that says nothing (cut off, or written by another hand) is passed over and stays where it is.
[[nodiscard]] std::vector<FloatLogLine> read_float_log(const std::filesystem::path& file);

/// Adds a line, on the disk before it returns; false when the disk refuses.
[[nodiscard]] bool append_float_log(const std::filesystem::path& file, const FloatLogLine& line);

} // namespace matula::desk
