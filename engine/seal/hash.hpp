#pragma once

#include "engine/seal/bytes.hpp"

#include <array>
#include <initializer_list>

namespace matula::seal {

/// BLAKE2b with 32 bytes (RFC 7693).
using Hash = std::array<unsigned char, 32>;

/// Of the parts one behind the other.
[[nodiscard]] Hash hash(std::initializer_list<View> parts);
/// The same under a key of 32 bytes.
[[nodiscard]] Hash keyed_hash(View key, std::initializer_list<View> parts);

/// Takes the same time wherever they differ.
[[nodiscard]] bool same(View a, View b);

[[nodiscard]] std::string hex(View bytes);
/// Nothing when it is not exactly `size` bytes of small hexadecimal letters.
[[nodiscard]] Bytes from_hex(std::string_view words, std::size_t size);

} // namespace matula::seal
