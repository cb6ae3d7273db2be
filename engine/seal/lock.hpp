#pragma once

#include "engine/seal/hash.hpp"
#include "engine/seal/secret.hpp"

#include <tl/expected.hpp>

#include <optional>
#include <string>

namespace matula::seal {

/// What it costs to try one passphrase (Argon2id, RFC 9106).
struct Effort {
  std::uint64_t passes = 3;
  std::uint64_t memory_bytes = 268435456; ///< 256 MiB: about a second a try.
};
inline constexpr Effort light{2, 67108864};     ///< 64 MiB, for machines with little memory.
inline constexpr Effort everyday{3, 268435456}; ///< What is taken unless another is asked for.
inline constexpr Effort heavy{4, 1073741824};   ///< 1 GiB.

/// Why a file's effort is not taken on; "" when it is. More than 1 GiB or ten passes is refused before
/// anything is set aside: a file must not be able to use up a machine's memory.
[[nodiscard]] std::string refuse_effort(const Effort& effort);

using Salt = std::array<unsigned char, 16>;

/// The key a passphrase stands for; what is wrong in words (effort refused, no memory).
[[nodiscard]] tl::expected<Secret, std::string> stretch(const Secret& passphrase, const Salt& salt,
                                                        const Effort& effort);

/// Says which key is meant without telling it: compared before anything is opened, so that one sealed text
/// cannot open to two different things under two passphrases.
[[nodiscard]] Hash commitment(const Secret& key);

/// XChaCha20-Poly1305: a random number used once, then the sealed text. `with` is sealed against change, not
/// hidden.
[[nodiscard]] Bytes close(View plain, View with, const Secret& key);
[[nodiscard]] std::optional<Secret> open(View closed, View with, const Secret& key);
/// Bytes that `close` adds.
inline constexpr std::size_t close_adds = 24 + 16;

} // namespace matula::seal
