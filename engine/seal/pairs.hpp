#pragma once

#include "engine/seal/hash.hpp"
#include "engine/seal/secret.hpp"

#include <optional>

namespace matula::seal {

using Key = std::array<unsigned char, 32>;
using Signature = std::array<unsigned char, 64>;

/// What a signature is under: one kind of thing can never pass as another.
enum class Signed { Pack, Checkpoint, Receipt, Release };

/// Ed25519 (RFC 8032).
class SigningPair {
public:
  /// The same 32 bytes, the same pair.
  explicit SigningPair(View seed);
  [[nodiscard]] const Key& open_half() const { return open_half_; }
  [[nodiscard]] Signature sign(Signed as, View message) const;

private:
  Key open_half_{};
  Secret secret_;
};

[[nodiscard]] bool verify(Signed as, View message, const Signature& signature, const Key& open_half);

/// X25519: anybody closes to the open half, only the holder opens.
class SealingPair {
public:
  explicit SealingPair(View seed);
  [[nodiscard]] const Key& open_half() const { return open_half_; }
  [[nodiscard]] std::optional<Bytes> open(View closed) const;

private:
  friend SealingPair sealing_pair_of(View signing_seed);
  SealingPair() : secret_(std::size_t{32}) {}
  Key open_half_{};
  Secret secret_;
};

/// Nothing when the key is no point one can close to.
[[nodiscard]] std::optional<Bytes> close_to(const Key& open_half, View plain);
/// Bytes that `close_to` adds.
inline constexpr std::size_t close_to_adds = 48;

/// The sealing pair that belongs to a signing pair, so that a device has one key only.
[[nodiscard]] SealingPair sealing_pair_of(View signing_seed);
[[nodiscard]] std::optional<Key> sealing_half_of(const Key& signing_half);

} // namespace matula::seal
