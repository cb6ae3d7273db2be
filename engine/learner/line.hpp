#pragma once

#include "engine/learner/record.hpp"
#include "engine/sitting/fields.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace matula::learner {

inline constexpr int record_format = 1;
inline constexpr const char* header_key = "matula_record";
inline constexpr const char* cut_off_key = "cut_off";

/// What a line of a record says.
enum class LineKind {
  Answer,
  Header,
  OtherHeader, ///< Of another program's record; wrong for this one.
  CutOff,      ///< The line above is a piece that was being written when the program or the machine stopped.
  Wrong
};

struct Line {
  LineKind kind = LineKind::Wrong;
  Answer answer;                      ///< Of an answer.
  std::vector<sitting::Wrong> wrongs; ///< Empty unless the line, or the header, is wrong.
};

[[nodiscard]] Line read_line(std::string_view text);
[[nodiscard]] std::string to_line(const Answer& answer);
[[nodiscard]] std::string header_line();
[[nodiscard]] std::string cut_off_line();

} // namespace matula::learner
