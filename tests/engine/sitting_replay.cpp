#include "engine/assets/world.hpp"
#include "engine/scenario/scenario.hpp"
#include "engine/sitting/live.hpp"
#include "engine/sitting/steps.hpp"
#include "sim/bench/bench.hpp"

#include <catch2/catch.hpp>

#include <filesystem>
#include <fstream>
#include <unistd.h>

using namespace matula;

namespace {

const assets::World& world() {
  static const auto read = assets::load(assets::folder());
  if (!read) {
    FAIL(scenario::to_text(read.error()));
  }
  return **read;
}

const scenario::Scenario& first_case() {
  static const auto read = scenario::load(MATULA_SOURCE_DIR "/scenarios/first_case.toml", world().catalogue);
  if (!read) {
    FAIL(scenario::to_text(read.error()));
  }
  return *read;
}

/// As a window does it: many short stretches of time.
void live_through(sitting::Live& live, double seconds) {
  const double until_s = live.session().time_s() + seconds;
  constexpr double half_microsecond_s = 0.5e-6; // a bench lives in whole microseconds
  while (live.session().time_s() < until_s - half_microsecond_s) {
    live.run_to(std::min(until_s, live.session().time_s() + 0.37));
  }
}

} // namespace

TEST_CASE("A sitting resumed from its log stands where it stood, to the last bit") {
  const auto file =
      std::filesystem::temp_directory_path() / ("matula_replay" + std::to_string(::getpid()) + ".jsonl");
  std::filesystem::remove(file);
  std::uint64_t left_at = 0;
  double left_at_s = 0;
  {
    auto live = sitting::Live::begin(world(), first_case(), file);
    REQUIRE(live.has_value());
    CHECK(live->take(bench::Action(bench::Pour{"specimen", "tube-1", 3, false})).done);
    live_through(*live, 3);
    CHECK(live->take(bench::Action(bench::Dispense{"ssa_3", "tube-1", 3, false})).done);
    CHECK(live->take(bench::Action(bench::Mix{"tube-1", bench::Manner::Invert, 5})).done);
    live_through(*live, 12);
    CHECK(live->take(sitting::Record{"ssa.grade", "2+"}).done);
    CHECK_FALSE(live->take(sitting::Record{"ssa.grade", "5+"}).done);
    CHECK_FALSE(live->take(sitting::Record{"decision.meaning", "nonsense"}).done);
    left_at = bench::state_hash(live->session().state());
    left_at_s = live->session().time_s();
  }
  std::ofstream(file, std::ios::app) << "{\"t\":30,\"do\":\"po";
  auto resumed = sitting::Live::resume(world(), first_case(), file);
  if (!resumed) {
    FAIL(scenario::to_text(resumed.error()));
  }
  CHECK(resumed->session().time_s() == left_at_s);
  CHECK(bench::state_hash(resumed->session().state()) == left_at);
  CHECK(resumed->session().worksheet().at("ssa.grade") == "2+");
  CHECK(resumed->lost() == "{\"t\":30,\"do\":\"po");
  live_through(*resumed, 25);
  CHECK(resumed->session().time_s() > left_at_s + 24);
  auto again = sitting::Live::resume(world(), first_case(), file);
  REQUIRE(again.has_value());
  CHECK(again->session().time_s() >= resumed->session().time_s() - sitting::Live::tick_s);
  std::filesystem::remove(file);
}

TEST_CASE("A sitting at an edited scenario is not resumed") {
  auto edited = first_case();
  const auto header = sitting::header_for(edited);
  edited.content_hash = "0000000000000000";
  CHECK(sitting::check_scenario(header, first_case(), "log").empty());
  CHECK(sitting::check_scenario(header, edited, "log").size() == 1);
}
