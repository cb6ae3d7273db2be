#pragma once

#include "engine/scenario/problem.hpp"
#include "engine/sitting/event.hpp"

#include <tl/expected.hpp>

#include <cstdint>
#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

namespace matula::sitting {

/// First line of a sitting: which case it is about and which text of it was played.
struct Header {
  std::string scenario;        ///< File name without its ending.
  std::string scenario_digest; ///< Of the scenario file's bytes, hexadecimal.
  std::string program;         ///< Version that began the sitting.
};

/// A sitting as read back.
struct Log {
  Header header;
  std::vector<Event> events;
  bool last_line_was_cut = false; ///< The event being written when the program was stopped is missing.
  std::uintmax_t whole_bytes = 0; ///< Length of the file up to the last whole line.
};

/// Digest of a scenario's text, to notice that a sitting was made with another one. FNV-1a, 64 bit: against
/// accidents only.
[[nodiscard]] std::string digest(std::string_view text);

/// Reads a sitting. A last line without its line break is left out and reported in `last_line_was_cut`;
/// anything else that is wrong is a problem.
[[nodiscard]] tl::expected<Log, scenario::Problems> read_log(const std::filesystem::path& file);
[[nodiscard]] tl::expected<Log, scenario::Problems> parse_log(std::string_view text,
                                                              const std::string& file_name);

/// Reads a steps file: events only, one a line, with blank lines and lines that start with # left out.
[[nodiscard]] tl::expected<std::vector<Event>, scenario::Problems>
read_steps(const std::filesystem::path& file);
[[nodiscard]] tl::expected<std::vector<Event>, scenario::Problems> parse_steps(std::string_view text,
                                                                               const std::string& file_name);

} // namespace matula::sitting
