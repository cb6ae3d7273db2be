#include "engine/sitting/log_writer.hpp"

#include "engine/sitting/event_json.hpp"

#include <nlohmann/json.hpp>

#include <cerrno>
#include <cstring>
#include <utility>

#include <fcntl.h>
#include <unistd.h>

namespace matula::sitting {

namespace {

using scenario::Problems;

Problems trouble(const std::filesystem::path& file, const std::string& what, int error) {
  return {{file.string(), 0, 0, "", what + ": " + std::strerror(error), "a folder that can be written to"}};
}

} // namespace

LogWriter::LogWriter(LogWriter&& other) noexcept
    : file_(std::move(other.file_)), descriptor_(std::exchange(other.descriptor_, -1)) {}

LogWriter& LogWriter::operator=(LogWriter&& other) noexcept {
  std::swap(file_, other.file_);
  std::swap(descriptor_, other.descriptor_);
  return *this;
}

LogWriter::~LogWriter() {
  if (descriptor_ >= 0) {
    ::close(descriptor_);
  }
}

tl::expected<LogWriter, Problems> LogWriter::begin(const std::filesystem::path& file, const Header& header) {
  const int descriptor = ::open(file.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_APPEND | O_CLOEXEC, 0644);
  if (descriptor < 0) {
    return tl::make_unexpected(trouble(file, "a sitting that cannot be begun", errno));
  }
  LogWriter writer(file, descriptor);
  nlohmann::ordered_json line;
  line["format"] = "matula sitting 1";
  line["scenario"] = header.scenario;
  line["digest"] = header.scenario_digest;
  line["program"] = header.program;
  const std::string problem = writer.write_line(line.dump());
  if (!problem.empty()) {
    return tl::make_unexpected(Problems{{file.string(), 0, 0, "", problem, "a disk with room"}});
  }
  return writer;
}

tl::expected<LogWriter, Problems> LogWriter::resume(const std::filesystem::path& file, const Log& log) {
  const int descriptor = ::open(file.c_str(), O_WRONLY | O_APPEND | O_CLOEXEC);
  if (descriptor < 0) {
    return tl::make_unexpected(trouble(file, "a sitting that cannot be opened for writing", errno));
  }
  LogWriter writer(file, descriptor);
  if (log.last_line_was_cut && ::ftruncate(descriptor, static_cast<off_t>(log.whole_bytes)) != 0) {
    return tl::make_unexpected(trouble(file, "a cut last line that cannot be removed", errno));
  }
  return writer;
}

std::string LogWriter::append(const Event& event) {
  return write_line(to_line(event));
}

std::string LogWriter::write_line(const std::string& line) {
  const std::string bytes = line + "\n";
  std::size_t written = 0;
  while (written < bytes.size()) {
    const ssize_t count = ::write(descriptor_, bytes.data() + written, bytes.size() - written);
    if (count < 0 && errno != EINTR) {
      return std::string("the sitting cannot be written: ") + std::strerror(errno);
    }
    written += count > 0 ? static_cast<std::size_t>(count) : 0;
  }
  if (::fdatasync(descriptor_) != 0 &&
      errno != EINVAL) { // EINVAL: a pipe or device, which has no disk behind it.
    return std::string("the sitting cannot be written to disk: ") + std::strerror(errno);
  }
  return {};
}

} // namespace matula::sitting
