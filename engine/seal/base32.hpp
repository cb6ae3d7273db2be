#pragma once

#include "engine/seal/bytes.hpp"

#include <optional>

namespace matula::seal {

/// Base 32 of RFC 4648 (A to Z, 2 to 7), without the padding unless asked for.
[[nodiscard]] std::string base32(View bytes, bool padded = false);
/// Capitals only, without padding; nothing for any other letter or for bits left over that are not zero.
[[nodiscard]] std::optional<Bytes> from_base32(std::string_view letters);

/// "ABCDEFGHJ" as "ABCD-EFGH-J".
[[nodiscard]] std::string in_groups(std::string_view letters, std::size_t each = 4);
/// What a person typed: capitals, without blanks and dashes; 0, 1 and 8 as the letters they are taken for.
[[nodiscard]] std::string tidy(std::string_view typed);

/// `letters` with `many` more behind them, which depend on all of them: a slip of the pen shows.
[[nodiscard]] std::string with_check(std::string_view letters, std::size_t many);
/// The letters without their check; nothing when it does not fit.
[[nodiscard]] std::optional<std::string> without_check(std::string_view letters, std::size_t many);

} // namespace matula::seal
