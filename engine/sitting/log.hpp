#pragma once

#include "engine/scenario/problem.hpp"
#include "engine/sitting/event.hpp"

#include <tl/expected.hpp>

#include <cstdint>
#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

namespace matula::scenario {
struct Scenario;
}

namespace matula::sitting {

inline constexpr int log_format = 1;

/// First line of a log: what the sitting is about.
struct Header {
  int format = log_format;
  std::string scenario_key;
  std::string scenario_file; ///< Where the scenario was read from when the sitting began.
  std::string scenario_hash; ///< scenario::Scenario::content_hash.
  std::uint64_t seed = 1;
  std::string program; ///< Version of the program that began it.
};

[[nodiscard]] Header header_for(const scenario::Scenario& scenario);
[[nodiscard]] std::string to_line(const Header& header);

/// A sitting as it was written down.
struct Log {
  Header header;
  std::vector<Event> events;
  std::uint64_t good_bytes = 0; ///< Up to and with the end of the last whole line.
  std::string
      cut_off; ///< The piece of a last line that was being written when the program was killed; else empty.
};

/// Reads a log strictly. Only the last line may be cut off, and only when its end is missing; every other
/// fault is a problem.
[[nodiscard]] tl::expected<Log, scenario::Problems> parse_log(std::string_view text,
                                                              const std::string& file_name);
[[nodiscard]] tl::expected<Log, scenario::Problems> read_log(const std::filesystem::path& file);

/// Says when neither the scenario nor its bench half is what the sitting began with; empty when one is.
[[nodiscard]] scenario::Problems check_scenario(const Header& header, const scenario::Scenario& scenario,
                                                const std::string& log_file);

/// Bench time to which a log brings the bench: of its last event or tick.
[[nodiscard]] double last_time_s(const std::vector<Event>& events);

} // namespace matula::sitting
