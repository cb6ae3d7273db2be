#pragma once

#include "engine/classroom/classroom.hpp"
#include "tests/engine/records_support.hpp"

#include <chrono>
#include <thread>

namespace matula::test {

/// Polls until `holds`, for at most a minute.
template <class Holds> bool wait_for(classroom::Classroom& room, Holds holds) {
  for (int i = 0; i < 6000; ++i) {
    (void)room.poll();
    if (holds()) {
      return true;
    }
    std::this_thread::sleep_for(std::chrono::milliseconds(10));
  }
  return false;
}

/// A classroom with a store open in which these sittings at the tiny scenario lie.
struct OpenRoom {
  OpenRoom(const fs::path& file, const std::vector<records::Marked>& sittings)
      : room(world(), standards(), assets::folder()) {
    records::Store(file.string()).add_all(sittings, 1800000000);
    room.open(file.string());
    REQUIRE(wait_for(room, [&] { return room.page().has_value(); }));
  }
  classroom::Classroom room;
};

} // namespace matula::test
