#pragma once

#include "engine/records/store.hpp"

#include <filesystem>
#include <string>
#include <vector>

namespace matula::classroom {

/// What was done with the store, or found in it, in words.
struct Kept {
  std::string title;
  std::vector<std::string> lines;
  bool changed = false; ///< The store holds something else than before.
};

/// What would be removed with a student.
struct Forgetting {
  std::string pseudonym;
  std::vector<records::SittingRow> sittings;
  records::Removed removed;
};

/// Sittings whose last day is over on a day, and what would be removed with them.
struct PastDays {
  std::string today;
  std::vector<records::SittingRow> sittings;
  records::Removed removed;
};

// Each throws records::Trouble.
[[nodiscard]] Forgetting look_at_forgetting(records::Store& store, const std::string& pseudonym);
[[nodiscard]] PastDays look_at_past(records::Store& store, const std::string& today);
[[nodiscard]] Kept forget(records::Store& store, const std::string& pseudonym);
[[nodiscard]] Kept forget_past(records::Store& store, const std::string& today);
[[nodiscard]] Kept take_names(records::Store& store, const std::filesystem::path& file);
[[nodiscard]] Kept back_up(records::Store& store, const std::filesystem::path& file);
[[nodiscard]] Kept check_store(records::Store& store);

} // namespace matula::classroom
