#pragma once

#include "engine/examination/returned.hpp"
#include "engine/seal/keys.hpp"

#include <filesystem>
#include <functional>
#include <map>
#include <nlohmann/json_fwd.hpp>
#include <string>
#include <vector>

namespace matula::examination {

/// Where the things lie with which returned results are opened and checked.
struct ReturnedFiles {
  std::filesystem::path folder; ///< Holds the results.
  std::filesystem::path pack;
  std::filesystem::path keys;  ///< The instructor's, locked.
  std::filesystem::path cards; ///< Folder of the learners' cards; empty: devices are not checked.
  std::filesystem::path codes; ///< Register of closing codes; empty: not checked.
};

/// A folder of results, opened and checked.
struct OpenedReturns {
  seal::InstructorKeys keys;
  Pack pack;
  std::map<std::string, seal::Key> cards; ///< By pseudonym.
  std::string rules;                      ///< The general marking rules as the pack was sealed with them.
  ReturnedFolder found;

  /// Whether the marking rules that stand in the assets now are other ones. False when there are none.
  [[nodiscard]] bool rules_changed(const std::filesystem::path& assets_folder) const;
};

/// Opens pack, cards, register, keys (`ask` gives the passphrase, and is asked last) and every result of the
/// folder. `told` hears how many of how many files are done; what it throws is passed on.
[[nodiscard]] seal::Maybe<OpenedReturns>
open_returned(const ReturnedFiles& files, const seal::AskPassphrase& ask,
              const std::function<void(std::size_t, std::size_t)>& told = {});

/// "to be reviewed: chain: ..." for everything that is not simply good, and for copies.
[[nodiscard]] std::vector<std::string> words_of(const std::vector<Check>& checks);
/// The same of one, also of one read back; empty when there is nothing to say.
[[nodiscard]] std::string words_of(const std::string& state, const std::string& what,
                                   const std::string& words);

/// What stands beside a sitting in a class's records: whether it is to be reviewed, closing code and checks.
[[nodiscard]] nlohmann::ordered_json checks_json(const std::vector<Check>& checks);
[[nodiscard]] std::string kept_checks(const Returned& returned);

} // namespace matula::examination
