#pragma once

#include "engine/examination/pack.hpp"

namespace matula::examination {

// How a pack's file is laid out: head (frame.hpp), wrapped key, bench section, key section, signature.

inline constexpr std::size_t content_key_bytes = 32;
inline constexpr std::size_t wrapped_bytes = content_key_bytes + seal::close_adds;
inline constexpr std::size_t signature_bytes = sizeof(seal::Signature);
inline constexpr std::size_t most_title = 200;
inline constexpr std::uint32_t most_minutes = 1440;

[[nodiscard]] seal::Bytes header_of(const PackHead& head);

/// What is signed: the hash of each part, so that no part can be changed or lent to another pack.
[[nodiscard]] seal::Bytes signed_words(seal::View head, seal::View wrapped, seal::View bench, seal::View key);

/// Why such a head is not believed; "" when it is.
[[nodiscard]] std::string refuse_head(const PackHead& head);

} // namespace matula::examination
