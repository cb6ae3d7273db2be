#pragma once

#include "engine/scenario/problem.hpp"

#include <tl/expected.hpp>

#include <cstdint>
#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace matula::learner {

/// What the learner was doing when an answer was given. Only a first answer to an unknown is kept.
enum class From { Sitting, Drill, Quiz };

/// One answer to one unknown, as it is kept from day to day.
struct Answer {
  std::int64_t when_s = 0; ///< UTC, seconds since 1970.
  From from = From::Drill;
  std::string
      skill; ///< "turbidity", "copper", "ring", "meniscus", "corrections", "reception", or a test's key.
  std::string test;                ///< Key of a procedure; empty where none was graded.
  std::string unknown;             ///< Which tube or delivery: enough to make it again.
  double difficulty = 0;           ///< On the scale of abilities (statistics::Answer).
  int credit = 0;                  ///< 0..1000.
  std::string written;             ///< In the learner's words.
  std::string expected;            ///< What the tube, or the arithmetic, showed.
  std::optional<double> intensity; ///< Of a graded tube, the model's, in grades: 2 is the middle of 1+.
  std::optional<int> grade;        ///< As read: an index into the test's words.
  std::string fault;               ///< Root fault the loss was charged to; empty for none.
};

/// What could be read of a record, and what could not.
struct Record {
  std::vector<Answer> answers; ///< Oldest first.
  scenario::Problems problems; ///< Lines that could not be read; they stay in the file.
};

/// A record that is not there yet is an empty one.
[[nodiscard]] Record load(const std::filesystem::path& file);

/// Adds answers at the end, on the disk before it returns; what stands there is never rewritten. Problems say
/// what the system answered.
[[nodiscard]] scenario::Problems append(const std::filesystem::path& file,
                                        const std::vector<Answer>& answers);

} // namespace matula::learner
