#pragma once

#include "engine/scenario/problem.hpp"
#include "engine/sitting/line_writer.hpp"
#include "engine/sitting/log.hpp"

#include <tl/expected.hpp>

#include <filesystem>
#include <functional>
#include <string>

namespace matula::sitting {

/// Told of a line of a log, without its end, once it is on the disk.
using LineWatch = std::function<void(const std::string&)>;

/// Appends events to a log, each on the disk before `append` returns.
class LogWriter {
public:
  /// A new log; a file that is already there is refused.
  [[nodiscard]] static tl::expected<LogWriter, scenario::Problems> create(const std::filesystem::path& file,
                                                                          const Header& header);
  /// Goes on after the last whole line of `log`, which was read from the file.
  [[nodiscard]] static tl::expected<LogWriter, scenario::Problems> reopen(const std::filesystem::path& file,
                                                                          const Log& log);

  /// False when the disk refused; `why` says what the system answered.
  [[nodiscard]] bool append(const Event& event);
  [[nodiscard]] const std::string& why() const { return lines_.why(); }

  /// From now on `watch` hears of every line.
  void watch(LineWatch watch) { watch_ = std::move(watch); }

private:
  explicit LogWriter(LineWriter lines) : lines_(std::move(lines)) {}

  LineWriter lines_;
  LineWatch watch_;
};

} // namespace matula::sitting
