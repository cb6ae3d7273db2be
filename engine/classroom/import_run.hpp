#pragma once

#include "engine/classroom/work.hpp"
#include "engine/records/import.hpp"

#include <filesystem>
#include <functional>
#include <optional>
#include <string>

namespace matula::classroom {

/// Asked for on the thread that works: making it reads files.
using AskMarker = std::function<records::Marker&()>;

/// What is to be taken in.
struct ImportOrder {
  std::filesystem::path folder;       ///< Holds a folder for every student.
  records::ScenarioFolders scenarios; ///< The instructor's own.
  std::string label;
  std::string keep_until; ///< "2027-09-30"; empty for no end.
  int threads = 2;
  std::int64_t now_s = 0;
};

/// How an import ended.
struct ImportEnd : WorkEnd {
  std::string folder;
  std::optional<records::ImportSum> sum; ///< Nothing when it was stopped or failed.

  /// One or two sentences.
  [[nodiscard]] std::string words() const;
};

[[nodiscard]] ImportEnd import_into(const std::string& address, const AskMarker& marker,
                                    const ImportOrder& order, Work& work);

} // namespace matula::classroom
