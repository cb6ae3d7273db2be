#include "engine/sitting/writer.hpp"

#include "engine/sitting/event_json.hpp"

#include <cerrno>
#include <cstring>
#include <fcntl.h>
#include <unistd.h>
#include <utility>

namespace matula::sitting {

namespace {

tl::unexpected<scenario::Problems> refused(const std::filesystem::path& file, const std::string& expected) {
  return tl::make_unexpected(scenario::Problems{
      {file.string(), 0, 0, "", "a file that cannot be written (" + std::string(std::strerror(errno)) + ")",
       expected}});
}

} // namespace

tl::expected<LogWriter, scenario::Problems> LogWriter::create(const std::filesystem::path& file,
                                                              const Header& header) {
  constexpr int everyone_reads = 0644;
  const int descriptor =
      ::open(file.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_APPEND | O_CLOEXEC, everyone_reads);
  if (descriptor < 0) {
    return refused(file, "a new file name in a folder that can be written");
  }
  LogWriter writer(descriptor, file.string());
  if (!writer.put(to_line(header))) {
    return refused(file, "room on the disk");
  }
  return writer;
}

tl::expected<LogWriter, scenario::Problems> LogWriter::reopen(const std::filesystem::path& file,
                                                              const Log& log) {
  const int descriptor = ::open(file.c_str(), O_WRONLY | O_APPEND | O_CLOEXEC);
  if (descriptor < 0) {
    return refused(file, "a log that can be written");
  }
  LogWriter writer(descriptor, file.string());
  if (::ftruncate(descriptor, static_cast<off_t>(log.good_bytes)) != 0) {
    return refused(file, "a log that can be written");
  }
  return writer;
}

LogWriter::~LogWriter() {
  if (descriptor_ >= 0) {
    ::close(descriptor_);
  }
}

LogWriter::LogWriter(LogWriter&& other) noexcept
    : descriptor_(std::exchange(other.descriptor_, -1)), name_(std::move(other.name_)),
      why_(std::move(other.why_)) {}

LogWriter& LogWriter::operator=(LogWriter&& other) noexcept {
  std::swap(descriptor_, other.descriptor_);
  std::swap(name_, other.name_);
  std::swap(why_, other.why_);
  return *this;
}

bool LogWriter::append(const Event& event) {
  return put(to_line(event));
}

bool LogWriter::put(const std::string& line) {
  const std::string whole = line + "\n";
  std::size_t done = 0;
  while (done < whole.size()) {
    const ssize_t wrote = ::write(descriptor_, whole.data() + done, whole.size() - done);
    if (wrote < 0 && errno != EINTR) {
      why_ = name_ + ": " + std::strerror(errno);
      return false;
    }
    done += wrote > 0 ? static_cast<std::size_t>(wrote) : 0;
  }
  if (::fsync(descriptor_) != 0) {
    why_ = name_ + ": " + std::strerror(errno);
    return false;
  }
  return true;
}

} // namespace matula::sitting
