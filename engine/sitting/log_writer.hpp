#pragma once

#include "engine/sitting/log.hpp"

#include <filesystem>
#include <string>

namespace matula::sitting {

/// Appends events to a sitting. Each event is one write of one whole line, on the disk before `append`
/// returns: whatever stops the program, at most the event being written is missing.
class LogWriter {
public:
  /// Begins a new sitting; refuses to touch a file that is already there.
  [[nodiscard]] static tl::expected<LogWriter, scenario::Problems> begin(const std::filesystem::path& file,
                                                                         const Header& header);
  /// Goes on with a sitting that `log` was read from, after removing a cut last line.
  [[nodiscard]] static tl::expected<LogWriter, scenario::Problems> resume(const std::filesystem::path& file,
                                                                          const Log& log);

  LogWriter(LogWriter&& other) noexcept;
  LogWriter& operator=(LogWriter&& other) noexcept;
  LogWriter(const LogWriter&) = delete;
  LogWriter& operator=(const LogWriter&) = delete;
  ~LogWriter();

  /// The problem, in words, when the event could not be written; empty when it is safe on the disk.
  [[nodiscard]] std::string append(const Event& event);

  [[nodiscard]] const std::filesystem::path& file() const { return file_; }

private:
  LogWriter(std::filesystem::path file, int descriptor) : file_(std::move(file)), descriptor_(descriptor) {}
  [[nodiscard]] std::string write_line(const std::string& line);

  std::filesystem::path file_;
  int descriptor_ = -1;
};

} // namespace matula::sitting
