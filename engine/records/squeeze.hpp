#pragma once

#include <string>
#include <string_view>

namespace matula::records {

/// A text made small, with words that such texts share taken from `codebook`. Zstandard (RFC 8878).
[[nodiscard]] std::string squeeze(std::string_view text, const std::string& codebook);

/// The text again; throws Trouble for anything that is not whole, or would be larger than a log may be.
[[nodiscard]] std::string unsqueeze(std::string_view small, const std::string& codebook);

/// Lines such as logs are made of. A store keeps the one it began with.
[[nodiscard]] std::string shipped_codebook();

/// A text's name by its content: 32 hexadecimal digits (BLAKE2b, RFC 7693).
[[nodiscard]] std::string content_name(std::string_view text);

} // namespace matula::records
