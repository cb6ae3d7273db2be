#include "engine/strict/disk.hpp"

#include <algorithm>
#include <cerrno>
#include <cstdlib>
#include <cstring>
#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

namespace matula::strict {

bool put(int descriptor, std::string_view bytes) {
  std::size_t done = 0;
  while (done < bytes.size()) {
    const ssize_t wrote = ::write(descriptor, bytes.data() + done, bytes.size() - done);
    if (wrote < 0 && errno != EINTR) {
      return false;
    }
    done += wrote > 0 ? static_cast<std::size_t>(wrote) : 0;
  }
  return ::fsync(descriptor) == 0;
}

bool put_at_end(int descriptor, std::string_view bytes) {
  struct stat before {};
  if (::fstat(descriptor, &before) != 0) {
    return false;
  }
  if (put(descriptor, bytes)) {
    return true;
  }
  const int why = errno;
  (void)!::ftruncate(descriptor, before.st_size); // Where that fails too, the reader finds half a line.
  errno = why;
  return false;
}

void keep_folder_entry(const std::filesystem::path& file) {
  const std::filesystem::path folder = file.has_parent_path() ? file.parent_path() : ".";
  const int descriptor = ::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
  if (descriptor >= 0) {
    ::fsync(descriptor);
    ::close(descriptor);
  }
}

std::string write_whole(const std::filesystem::path& file, std::string_view bytes, bool own) {
  constexpr mode_t owner_only = 0600;
  constexpr mode_t everyone_reads = 0644;
  std::string half = file.string() + ".XXXXXX";
  const int descriptor = ::mkstemp(half.data());
  if (descriptor < 0) {
    return std::strerror(errno);
  }
  const bool written = put(descriptor, bytes) && ::fchmod(descriptor, own ? owner_only : everyone_reads) == 0;
  std::string why = written ? "" : std::strerror(errno);
  ::close(descriptor);
  if (written && ::rename(half.c_str(), file.c_str()) != 0) {
    why = std::strerror(errno);
  }
  if (why.empty()) {
    keep_folder_entry(file);
  } else {
    ::unlink(half.c_str());
  }
  return why;
}

std::vector<std::filesystem::path> files_in(const std::filesystem::path& folder, const std::string& ending) {
  std::vector<std::filesystem::path> files;
  std::error_code missing;
  for (const auto& entry : std::filesystem::directory_iterator(folder, missing)) {
    if (entry.path().extension() == ending) {
      files.push_back(entry.path());
    }
  }
  std::sort(files.begin(), files.end());
  return files;
}

bool is_readable_folder(const std::filesystem::path& folder) {
  std::error_code failed;
  std::filesystem::directory_iterator first(folder, failed);
  return !failed;
}

} // namespace matula::strict
