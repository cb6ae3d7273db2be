#include "engine/sitting/line_writer.hpp"

#include "engine/strict/disk.hpp"

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

tl::expected<LineWriter, scenario::Problems> LineWriter::create(const std::filesystem::path& file,
                                                                const std::string& first_line) {
  constexpr int everyone_reads = 0644;
  const int descriptor =
      ::open(file.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_APPEND | O_CLOEXEC, everyone_reads);
  if (descriptor < 0) {
    return refused(file, "a new file name in a folder that can be written");
  }
  LineWriter writer(descriptor, file.string());
  if (!writer.append(first_line)) {
    return refused(file, "room on the disk");
  }
  return writer;
}

tl::expected<LineWriter, scenario::Problems> LineWriter::reopen(const std::filesystem::path& file,
                                                                std::uint64_t good_bytes) {
  const int descriptor = ::open(file.c_str(), O_WRONLY | O_APPEND | O_CLOEXEC);
  if (descriptor < 0) {
    return refused(file, "a log that can be written");
  }
  LineWriter writer(descriptor, file.string());
  if (::ftruncate(descriptor, static_cast<off_t>(good_bytes)) != 0) {
    return refused(file, "a log that can be written");
  }
  return writer;
}

LineWriter::~LineWriter() {
  if (descriptor_ >= 0) {
    ::close(descriptor_);
  }
}

LineWriter::LineWriter(LineWriter&& other) noexcept
    : descriptor_(std::exchange(other.descriptor_, -1)), name_(std::move(other.name_)),
      why_(std::move(other.why_)) {}

LineWriter& LineWriter::operator=(LineWriter&& other) noexcept {
  std::swap(descriptor_, other.descriptor_);
  std::swap(name_, other.name_);
  std::swap(why_, other.why_);
  return *this;
}

bool LineWriter::append(const std::string& line) {
  const bool good = strict::put_at_end(descriptor_, line + "\n");
  if (!good) {
    why_ = name_ + ": " + std::strerror(errno);
  }
  return good;
}

} // namespace matula::sitting
