// A learner's tube among the earlier ones of the same test, out of sittings that were handed in.
#include "engine/desk/desk.hpp"
#include "engine/sitting/steps.hpp"

#include <catch2/catch.hpp>

#include <fstream>
#include <iterator>
#include <unistd.h>

using namespace matula;
namespace fs = std::filesystem;

namespace {

const fs::path root = MATULA_SOURCE_DIR;

const desk::Ground& ground() {
  static const auto loaded = desk::Ground::load();
  REQUIRE(loaded);
  return *loaded;
}

/// Works a case by a file of steps to its marks.
desk::Desk work(const fs::path& folder, const std::string& scenario, const fs::path& steps) {
  auto begun = desk::Desk::begin(ground(), root / "scenarios" / (scenario + ".toml"), folder);
  REQUIRE(begun);
  std::ifstream in(root / steps);
  const auto events =
      sitting::parse_steps(std::string{std::istreambuf_iterator<char>(in), {}}, steps.string());
  REQUIRE(events);
  for (const auto& event : *events) {
    if (const auto* action = std::get_if<bench::Action>(&event.what)) {
      begun->act(*action);
    } else if (const auto* record = std::get_if<sitting::Record>(&event.what)) {
      REQUIRE(begun->record(record->item, record->value) == "");
    } else {
      REQUIRE(begun->finish() == "");
    }
  }
  return std::move(*begun);
}

const scoring::ByTheBook& tube(const desk::Desk& desk, const std::string& test) {
  for (const auto& one : desk.report()->tubes) {
    if (one.test == test) {
      return one;
    }
  }
  throw std::runtime_error("no such test");
}

} // namespace

TEST_CASE("earlier tubes stand by strength with the words of their day, unfinished sittings and other tests "
          "apart") {
  const auto folder = fs::temp_directory_path() / ("earlier-" + std::to_string(::getpid()));
  fs::remove_all(folder);
  const auto first = work(folder, "first_case", "scenarios/first_case.steps.jsonl");
  CHECK(first.earlier_tubes(tube(first, "ssa"), {}, 4).size() == 1); // nothing but its own
  {                                                                  // Begun and left.
    auto left = desk::Desk::begin(ground(), root / "scenarios" / "first_case.toml", folder);
    REQUIRE(left);
  }
  const auto second = work(folder, "faint", "scenarios/steps/faint.jsonl");
  const auto ladder = second.earlier_tubes(tube(second, "ssa"), {}, 4);
  REQUIRE(ladder.size() == 2);
  CHECK(ladder[0].sitting == "this one"); // the faint one
  CHECK(ladder[1].sitting == "first_case-1");
  CHECK(ladder[1].written == "2+");
  CHECK(ladder[1].shown == "2+");
  CHECK(ladder[0].intensity < ladder[1].intensity);
  CHECK(ladder[1].looks.level_mm > 10);
  CHECK(second.earlier_tubes(tube(second, "ssa"), {}, 0).size() == 1);
}

TEST_CASE("the guide of a case goes on where a sitting was left") {
  const auto folder = fs::temp_directory_path() / ("guided-" + std::to_string(::getpid()));
  fs::remove_all(folder);
  fs::path log;
  {
    auto begun = desk::Desk::begin(ground(), root / "scenarios" / "first_case.toml", folder);
    REQUIRE(begun);
    log = begun->log_file();
    REQUIRE(begun->guide());
    CHECK(begun->guide()->steps_done == 0);
    CHECK_FALSE(begun->guide()->welcome.empty());
    begun->act(bench::Protect{true, true});
    begun->act(bench::Mix{"specimen", bench::Manner::Swirl, 10});
    REQUIRE(begun->record("aid.guide", "yes") == "");
    CHECK(begun->guide()->steps_done == 2);
    CHECK(begun->guide()->welcome.empty());
    CHECK(begun->guide()->show == "worksheet");
  }
  const auto resumed = desk::Desk::resume(ground(), log, root / "scenarios");
  REQUIRE(resumed);
  CHECK(resumed->guide()->steps_done == 2);
  auto other = desk::Desk::begin(ground(), root / "scenarios" / "faint.toml", folder);
  REQUIRE(other);
  CHECK_FALSE(other->guide());
}
