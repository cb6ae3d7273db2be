#pragma once

#include "engine/seal/lock.hpp"
#include "engine/seal/pairs.hpp"
#include "engine/seal/refusal.hpp"

#include <filesystem>
#include <functional>

namespace matula::seal {

/// An instructor's keys: both pairs come from one secret of 32 bytes.
struct InstructorKeys {
  std::string name;
  Secret master;
  SealingPair sealing;
  SigningPair signing;
};

/// What may be known of locked keys without the passphrase.
struct KeysCard {
  std::string name;
  Key sealing{};
  Key signing{};
  Effort effort;
};

/// Keys of a new secret. `name`: words for a person, at most 100 bytes.
[[nodiscard]] InstructorKeys make_keys(const std::string& name);
[[nodiscard]] InstructorKeys keys_from(Secret master, const std::string& name);

/// Sixteen letters in groups, of both open halves, to be compared by eye.
[[nodiscard]] std::string fingerprint(const Key& sealing, const Key& signing);

[[nodiscard]] Maybe<Bytes> lock_keys(const InstructorKeys& keys, const Secret& passphrase,
                                     const Effort& effort, const std::string& file);
[[nodiscard]] Maybe<InstructorKeys> unlock_keys(View file, const Secret& passphrase, const std::string& name);
[[nodiscard]] Maybe<KeysCard> read_card(View file, const std::string& name);

/// Gives the passphrase, or says why there is none.
using AskPassphrase = std::function<Maybe<Secret>()>;
/// Reads and unlocks locked keys. Nobody is asked for a passphrase for a file that no passphrase can open.
[[nodiscard]] Maybe<InstructorKeys> load_keys(const std::filesystem::path& file, const AskPassphrase& ask);

/// The secret as lines to be printed: four of sixteen letters in groups, each with a check of its own, so
/// that a slip is found in its line.
[[nodiscard]] std::string print_backup(const InstructorKeys& keys);
[[nodiscard]] Maybe<InstructorKeys> read_backup(std::string_view text, const std::string& name);

} // namespace matula::seal
