#pragma once

#include "engine/seal/bytes.hpp"
#include "engine/seal/refusal.hpp"

#include <filesystem>

namespace matula::seal {

/// Kinds of file this room writes. Each begins with eight letters of its own.
enum class Kind { Keys, Device, Pack, Result, Release };

/// Every file: eight letters, the format's version (two bytes), the length of the header (four bytes), the
/// header, the body.
inline constexpr std::uint16_t format_version = 1;
inline constexpr std::size_t most_header_bytes = 4096;
inline constexpr std::uint64_t most_file_bytes = 268435456; ///< Nothing longer is read into memory.

/// A file taken apart; the views are into the bytes that were given.
struct Frame {
  View head;   ///< From the first letter to the end of the header.
  View header; ///< Its fields.
  View body;
};

/// Letters, version and header of a file.
[[nodiscard]] Bytes head_of(Kind kind, const Bytes& header);

/// Takes a file apart; says what it seems to be when it is of another kind, and refuses another version.
[[nodiscard]] Maybe<Frame> read_frame(View file, Kind kind, const std::string& name);

/// Whether a file begins as this kind does.
[[nodiscard]] bool begins_as(View file, Kind kind);

/// The bytes of a file that is not longer than `most_file_bytes`.
[[nodiscard]] Maybe<Bytes> read_bytes(const std::filesystem::path& file, const std::string& wanted);

/// Writes the whole file or none of it; see strict::write_whole.
[[nodiscard]] scenario::Problems write_bytes(const std::filesystem::path& file, View bytes, bool own = false);

} // namespace matula::seal
