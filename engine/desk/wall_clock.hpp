#pragma once

#include <chrono>
#include <cstdint>

namespace matula::desk {

/// UTC, seconds since 1970.
inline std::int64_t now_s() {
  using namespace std::chrono;
  return duration_cast<seconds>(system_clock::now().time_since_epoch()).count();
}

} // namespace matula::desk
