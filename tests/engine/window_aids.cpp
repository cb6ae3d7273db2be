// Aids of the window: kept from run to run, and a wait that is over at once.
#include "engine/window/aids.hpp"
#include "engine/window/clock.hpp"

#include <catch2/catch.hpp>

#include <fstream>
#include <unistd.h>

using namespace matula::window;
namespace fs = std::filesystem;

namespace {

fs::path fresh_folder() {
  const auto folder = fs::temp_directory_path() / ("aids-" + std::to_string(::getpid()));
  fs::remove_all(folder);
  return folder;
}

} // namespace

TEST_CASE("aids are kept from run to run; nothing kept gives what the command line asked for") {
  const auto folder = fresh_folder();
  CHECK(load_aids(folder, {1.25F, false, false}).text_scale == 1.25F);
  keep_aids(folder, {1.5F, true, true});
  const Aids back = load_aids(folder, {});
  CHECK(back.text_scale == 1.5F);
  CHECK(back.still);
  CHECK(back.hues);
}

TEST_CASE("a file of aids that another hand spoiled does no harm") {
  const auto folder = fresh_folder();
  fs::create_directories(folder);
  for (const char* text : {"", "{", "[1]", R"({"text": "big", "still": 3})", R"({"text": 40})"}) {
    CAPTURE(text);
    std::ofstream(folder / "aids.json") << text;
    const Aids aids = load_aids(folder, {});
    CHECK(aids.text_scale >= 1);
    CHECK(aids.text_scale <= 2);
    CHECK_FALSE(aids.still);
  }
}

TEST_CASE("without motion a wait is over in one step, and otherwise takes some seconds on the wall") {
  Clock moving;
  moving.wait_until(0, 600);
  CHECK(moving.next(0, 0.03) < 60);
  CHECK(moving.waiting());
  Clock still;
  still.set_at_once(true);
  still.wait_until(0, 600);
  CHECK(still.next(0, 0.03) == 600);
  CHECK_FALSE(still.waiting());
}
