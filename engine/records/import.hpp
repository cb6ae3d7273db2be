#pragma once

#include "engine/records/gather.hpp"
#include "engine/records/marker.hpp"
#include "engine/records/store.hpp"

#include <functional>

namespace matula::records {

/// One sitting dealt with.
struct Step {
  std::size_t done = 0; ///< With this one.
  std::size_t total = 0;
  std::string came_from;
  std::string words;    ///< "new, number 12", "known already", or why it was refused.
  long long number = 0; ///< Where it is stored; 0 for a refused one and where it was not looked up.
};

/// Told of every sitting, on the thread that imports.
using Progress = std::function<void(const Step&)>;

struct ImportSum {
  int fresh = 0;
  int known = 0;   ///< The very log, or a longer one, was stored already.
  int goes_on = 0; ///< Of the fresh ones: go on where a stored one ended.
  std::vector<Refused> refused;
  std::vector<std::string> warnings; ///< Same logs of two students, a clock set back, lines cut short.
};

struct ImportWishes {
  std::string label;
  std::string keep_until; ///< "2027-09-30"; empty for no end.
  int threads = 2;
  std::int64_t now_s = 0; ///< What the clock says, UTC.
};

/// Imports every sitting found under the folder. Marked on `threads` threads, stored one by one in the order
/// of their paths, each in its own transaction: what was stored when the program is killed stays, and a
/// second run goes on. Importing the same folder again changes nothing. Throws Trouble of the store.
ImportSum import_folder(Store& store, Marker& marker, const std::filesystem::path& folder,
                        const ScenarioFolders& scenarios, const ImportWishes& wishes,
                        const Progress& progress);

/// The same for sittings the caller has read itself, such as opened sealed results.
ImportSum import_all(Store& store, Marker& marker, const std::vector<Incoming>& sittings,
                     const ImportWishes& wishes, const Progress& progress);

} // namespace matula::records
