#pragma once

#include "engine/scenario/problem.hpp"
#include "engine/sitting/log.hpp"

#include <tl/expected.hpp>

#include <filesystem>
#include <string>

namespace matula::sitting {

/// Appends events to a log, each on the disk before `append` returns. Only added to, never rewritten; only
/// the cut-off piece of a last line is taken away when a log is opened again.
class LogWriter {
public:
  /// A new log; a file that is already there is refused.
  [[nodiscard]] static tl::expected<LogWriter, scenario::Problems> create(const std::filesystem::path& file,
                                                                          const Header& header);
  /// Goes on after the last whole line of `log`, which was read from the file.
  [[nodiscard]] static tl::expected<LogWriter, scenario::Problems> reopen(const std::filesystem::path& file,
                                                                          const Log& log);
  ~LogWriter();
  LogWriter(LogWriter&& other) noexcept;
  LogWriter& operator=(LogWriter&& other) noexcept;

  /// False when the disk refused; `why` says what the system answered.
  [[nodiscard]] bool append(const Event& event);
  [[nodiscard]] const std::string& why() const { return why_; }

private:
  LogWriter(int descriptor, std::string name) : descriptor_(descriptor), name_(std::move(name)) {}
  [[nodiscard]] bool put(const std::string& line);

  int descriptor_ = -1;
  std::string name_;
  std::string why_;
};

} // namespace matula::sitting
