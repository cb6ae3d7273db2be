#pragma once

#include "engine/classroom/import_run.hpp"
#include "engine/examination/open_returned.hpp"

#include <optional>
#include <string>
#include <vector>

namespace matula::classroom {

/// Returned results of an examination that are to be opened, checked and taken in.
struct SealedOrder {
  examination::ReturnedFiles files;
  std::string label;
  std::filesystem::path assets_folder; ///< Whose marking rules are held against those of the pack.
  int threads = 2;
  std::int64_t now_s = 0;
};

/// What became of one result that could be opened.
struct SealedSitting {
  std::string file; ///< Its name, without the folder.
  std::string pseudonym;
  std::string label; ///< "unknown-1"
  std::string case_key;
  bool to_be_reviewed = false;
  std::vector<std::string> checks; ///< What is not simply good, in words.
  std::string kept;                ///< "new, number 12", or why it did not come into the store.
  long long number = 0;            ///< In the store; 0 when it was not stored just now.
};

struct SealedEnd : WorkEnd {
  std::string examination; ///< Its title.
  bool rules_changed = false;
  std::vector<SealedSitting> sittings;
  std::vector<std::string> unreadable;   ///< Files that could not be opened, and why.
  std::vector<std::string> outstanding;  ///< "heron-07, unknown-2": nothing was handed in.
  std::optional<records::ImportSum> sum; ///< Nothing when it was stopped or failed.

  /// One or two sentences.
  [[nodiscard]] std::string words() const;
};

/// The passphrase is given up once the keys are open.
[[nodiscard]] SealedEnd take_sealed(const std::string& address, const AskMarker& marker,
                                    const SealedOrder& order, seal::Secret passphrase, Work& work);

/// A checked result as it comes into a class's records; nothing when the pack has no such case.
[[nodiscard]] std::optional<records::Incoming>
incoming_of(const examination::Returned& returned, const std::string& label, const std::string& keep_until);

} // namespace matula::classroom
