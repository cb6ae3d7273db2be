#pragma once

#include "engine/classroom/import_run.hpp"
#include "engine/records/rescore.hpp"

#include <filesystem>
#include <string>

namespace matula::classroom {

/// Stored sittings that are to be marked anew.
struct RescoreOrder {
  records::Scope scope;
  std::filesystem::path scenario; ///< The case's text with other weights, [marking] or decisions; empty: own.
  std::filesystem::path rules; ///< Folder of assets whose rules and world are gone by; empty: the program's.
  bool on_trial = true;        ///< Nothing is stored.
  int threads = 2;
  std::int64_t now_s = 0;
};

struct RescoreEnd : WorkEnd {
  bool on_trial = false;
  records::RescoreSum sum; ///< Of what was done; all of it unless stopped or failed.

  /// Some sentences.
  [[nodiscard]] std::string words() const;
};

[[nodiscard]] RescoreEnd mark_anew(const std::string& address, const AskMarker& marker,
                                   const RescoreOrder& order, Work& work);

} // namespace matula::classroom
