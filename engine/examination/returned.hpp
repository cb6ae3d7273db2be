#pragma once

#include "engine/examination/pack.hpp"
#include "engine/examination/result.hpp"

#include <filesystem>
#include <functional>
#include <map>
#include <optional>

namespace matula::examination {

/// One thing that was looked at in a returned sitting.
struct Check {
  enum class State { Good, ToBeReviewed, NotChecked };
  std::string what; ///< "receipt", "chain", "session", "device", "closing code", "copies", "scenario", "time"
  State state = State::Good;
  std::string words; ///< What was found, for a person; what differs, never what it means.
};

/// A returned sitting after the checks, in plain values for whoever keeps or marks it.
struct Returned {
  std::string file;
  std::string pack_id; ///< Hexadecimal letters.
  std::string pseudonym;
  std::string label;         ///< "unknown-1"
  std::string case_key;      ///< Of the scenario; empty when the pack has no such case for this learner.
  std::string scenario_text; ///< The whole scenario, with its answers.
  std::string bench_hash;    ///< What the log's first line should name; empty without a scenario.
  std::string log;
  std::string closing_code;    ///< As the chain of this log gives it.
  std::int64_t begun_at_s = 0; ///< By the learner's machine; 0 when no checkpoint tells.
  std::int64_t ended_at_s = 0;
  std::vector<Check> checks;

  [[nodiscard]] bool to_be_reviewed() const;
};

/// What the instructor holds returned sittings against.
struct Register {
  std::map<std::string, seal::Key> devices; ///< By pseudonym; empty: not checked.
  /// Closing codes from the room by pseudonym and by label (or "" where the register names no case); empty:
  /// not checked.
  std::map<std::pair<std::string, std::string>, std::string> codes;
};

/// Reads `pseudonym,code` or `pseudonym,case,code` lines; a first line of words is passed over.
[[nodiscard]] seal::Maybe<decltype(Register::codes)> read_codes(const std::filesystem::path& file);

/// Checks one opened result.
[[nodiscard]] Returned check(const HandedIn& result, const std::string& file, const Pack& pack,
                             const KeySection& key, const Register& held);

/// A folder of results after every check.
struct ReturnedFolder {
  std::vector<Returned> sittings;       ///< In the order of learners and cases.
  scenario::Problems unreadable;        ///< Files that could not be opened, and why.
  std::vector<std::string> outstanding; ///< "heron-07, unknown-2": nothing was handed in.
};

/// Opens every file of the folder that is a sealed result by name (*.result). Copies are told from second
/// sittings. `told` hears how many of how many files are done.
[[nodiscard]] seal::Maybe<ReturnedFolder>
open_folder(const std::filesystem::path& folder, const Pack& pack, const KeySection& key,
            const seal::InstructorKeys& keys, const Register& held,
            const std::function<void(std::size_t, std::size_t)>& told = {});

} // namespace matula::examination
