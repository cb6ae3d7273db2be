#pragma once

#include <csignal>
#include <cstddef>
#include <sys/resource.h>

namespace matula::test {

/// While one stands, no file of this process grows beyond so many bytes: as good as a disk with no more room.
class FullDisk {
public:
  explicit FullDisk(std::size_t bytes) {
    old_handler_ = ::signal(SIGXFSZ, SIG_IGN);
    ::getrlimit(RLIMIT_FSIZE, &old_limit_);
    const rlimit limit{bytes, old_limit_.rlim_max};
    ::setrlimit(RLIMIT_FSIZE, &limit);
  }
  ~FullDisk() {
    ::setrlimit(RLIMIT_FSIZE, &old_limit_);
    ::signal(SIGXFSZ, old_handler_);
  }
  FullDisk(const FullDisk&) = delete;
  FullDisk& operator=(const FullDisk&) = delete;

private:
  rlimit old_limit_{};
  void (*old_handler_)(int) = nullptr;
};

} // namespace matula::test
