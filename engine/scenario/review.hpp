#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace matula::scenario {

/// Who stands for a case, and a sitting that must come out as it did when it was looked at.
struct Review {
  /// One entry of the changelog.
  struct Change {
    std::string version;
    std::string date; ///< 2026-11-27
    std::string words;
  };
  /// A worked sitting.
  struct Worked {
    std::string steps;                ///< A steps file, from the folder of the case.
    std::map<std::string, int> marks; ///< By ledger, earned.
    std::optional<bool> passed;
  };
  std::string author;
  std::string reviewer; ///< Empty: nobody yet.
  std::string version;
  std::vector<Change> changes;
  std::vector<Worked> worked;
};

/// The [review] of a case's text that reads well; nothing when there is none.
[[nodiscard]] std::optional<Review> review_of(const std::string& text);

/// The ledgers a worked sitting may name.
[[nodiscard]] const std::vector<std::string>& ledger_words();

} // namespace matula::scenario
