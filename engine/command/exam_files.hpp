#pragma once

#include "engine/examination/pack.hpp"
#include "engine/seal/device.hpp"
#include "engine/seal/keys.hpp"

#include <iosfwd>
#include <string>

namespace matula::command {

/// The words of a passphrase, taken from the first line of a file ("-": standard input), or asked for at the
/// terminal without showing it.
[[nodiscard]] seal::Maybe<std::string> ask_passphrase(const std::string& file, const std::string& whose);

[[nodiscard]] seal::Effort effort_of(const std::string& word);

/// Asks so for the instructor's own passphrase when it is needed.
[[nodiscard]] seal::AskPassphrase ask_for_own(const std::string& passphrase_file);

/// Reads and unlocks an instructor's keys.
[[nodiscard]] seal::Maybe<seal::InstructorKeys> unlock(const std::string& keys,
                                                       const std::string& passphrase_file);

/// Prints the problems; the exit code for a bad input.
int tell(const scenario::Problems& problems, std::ostream& err);

} // namespace matula::command
