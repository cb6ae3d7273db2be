#pragma once

#include "engine/records/store.hpp"

#include <string>
#include <vector>

namespace matula::records {

/// One thing that was looked at when a sealed result was opened.
struct CheckFound {
  std::string what;  ///< "chain", "closing code"
  std::string state; ///< "good", "to be reviewed", "not checked"
  std::string words; ///< One sentence, for the instructor.
};

/// What stands beside a sitting (SittingRow::checks), in its order. Nothing for a sitting that came in as a
/// plain log, or for text that is no such list.
[[nodiscard]] std::vector<CheckFound> checks_of(const std::string& checks);

/// Of those, "chain: the log is not as it was signed ..." for each that is to be reviewed.
[[nodiscard]] std::vector<std::string> why_review(const std::string& checks);

/// The names alone, "chain, closing code"; empty when nothing is to be reviewed.
[[nodiscard]] std::string what_to_review(const std::string& checks);

/// A stored sitting that is to be reviewed before its marks stand.
struct ToReview {
  long long number = 0;
  std::string pseudonym;
  std::string exercise;
  std::vector<std::string> why;
};

/// All of them, by number. Their marks count like those of any other sitting: what becomes of them, the
/// instructor says. Throws Trouble.
[[nodiscard]] std::vector<ToReview> to_review(Store& store, const Scope& scope);

} // namespace matula::records
