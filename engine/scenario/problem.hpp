#pragma once

#include <string>
#include <vector>

namespace matula::scenario {

/// One thing wrong with a file a person wrote.
struct Problem {
  std::string file;
  int line = 0; ///< From 1; 0 when the whole file is meant.
  int column = 0;
  std::string text;     ///< The offending line.
  std::string found;    ///< What is there.
  std::string expected; ///< What to write instead, with the allowed range.
};

using Problems = std::vector<Problem>;

/// "FILE:LINE:COLUMN: found ...; expected ..." with the line beneath and a caret.
[[nodiscard]] std::string to_text(const Problem& problem);
[[nodiscard]] std::string to_text(const Problems& problems);

} // namespace matula::scenario
