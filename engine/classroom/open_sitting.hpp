#pragma once

#include "engine/attribution/explanation.hpp"
#include "engine/classroom/playback.hpp"
#include "engine/records/marker.hpp"
#include "engine/records/store.hpp"

#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace matula::classroom {

struct Recording;

/// One stored sitting, marked anew by replay.
struct OpenSitting {
  records::SittingRow row;         ///< With the score that counts.
  std::vector<std::string> checks; ///< What was found when its sealed result was opened, in words.
  std::string patient;             ///< Whose specimen it was, in one line.
  scoring::Report report;          ///< By the rules of today.
  bool other_rules = false;       ///< The score that counts was made by other rules or another scenario text.
  std::vector<std::string> shelf; ///< Bottles that stood there.
  std::shared_ptr<const Recording> recording;
  std::vector<attribution::Explanation> why; ///< Why each reading came out so; comes later than the rest.
  bool explained = false;

  /// The sitting on the bench, before its first line.
  [[nodiscard]] Playback playback() const { return Playback(recording); }
};

/// Replays and marks a stored sitting. Throws records::Trouble for a number nobody has and for a log that
/// cannot be replayed.
[[nodiscard]] OpenSitting open_sitting(records::Store& store, records::Marker& marker, long long number);

/// Works out why each of its readings came out so; takes seconds.
[[nodiscard]] std::vector<attribution::Explanation> explain_sitting(const OpenSitting& sitting,
                                                                    const records::Marker& marker);

} // namespace matula::classroom
