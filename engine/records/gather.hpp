#pragma once

#include "engine/records/rows.hpp"

#include <filesystem>
#include <functional>
#include <vector>

namespace matula::records {

/// Something in a folder that could not be taken as a sitting, and why.
struct Refused {
  std::string file;
  std::string why;
};

/// Where the instructor's own copies of the scenarios are looked for, in this order.
using ScenarioFolders = std::vector<std::filesystem::path>;

/// A sitting's log found in a folder. Its texts are read later, one after the other.
struct Found {
  std::filesystem::path file;
  std::string pseudonym; ///< Name of the student's folder.
};

/// Logs (*.jsonl that begin like one) under a folder, which holds a folder for every student, named by the
/// pseudonym; in the order of their paths. Other files are passed over; a log outside of any student's folder
/// is refused. Throws Trouble when the folder cannot be read.
[[nodiscard]] std::vector<Found> find_logs(const std::filesystem::path& folder,
                                           std::vector<Refused>& refused);

/// Reads a log and the scenario it names from the instructor's folders: KEY.toml whose text has the log's
/// fingerprint. Says in `wrong` what is missing.
[[nodiscard]] Incoming read_found(const Found& found, const ScenarioFolders& scenarios, std::string& wrong);

} // namespace matula::records
