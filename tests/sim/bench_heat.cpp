#include "bench_fixture.hpp"

#include <catch2/catch.hpp>

using namespace matula;
using namespace matula::bench;

namespace {

State with_tube(const Setup& setup, double volume_ml) {
  State state = begin(setup);
  perform(state, setup, Protect{true, true});
  perform(state, setup, Pour{"specimen", "tube-1", volume_ml, false});
  perform(state, setup, LightFlame{true});
  return state;
}

Move in_flame(double height = 0.85, bool moving = true, bool towards = false) {
  return {"tube-1", Place::Flame, height, towards, moving};
}

} // namespace

TEST_CASE("The upper part boils within a minute or so while the bottom stays cool") {
  const Setup setup = test::setup();
  State state = with_tube(setup, 9);
  REQUIRE(perform(state, setup, in_flame()).done);
  advance(state, setup, 75);
  const Vessel& tube = state.vessels.at("tube-1");
  CHECK(tube.trace.hot_from_s > 10);
  CHECK(tube.trace.hot_from_s < 60);
  CHECK(tube.trace.boiling_seconds > 5);
  // Steam comes from the part that is heated, and the cool part below shows no bubble.
  const auto seen = bench::look(state, setup, "tube-1", {});
  CHECK(seen.boiling > 0);
  CHECK(seen.boils_from_mm > 0.3 * seen.level_mm);
  CHECK(seen.boils_from_mm < seen.level_mm);
  CHECK(tube.column.layers.back().temperature_c > 90);
  CHECK(tube.column.layers.front().temperature_c < 50);
  CHECK(tube.trace.seconds_in_flame == Approx(75).margin(1));
}

TEST_CASE("A flame that is put out heats no more") {
  const Setup setup = test::setup();
  State state = with_tube(setup, 6);
  perform(state, setup, in_flame());
  advance(state, setup, 10);
  perform(state, setup, LightFlame{false});
  const double hottest = state.vessels.at("tube-1").trace.hottest_c;
  advance(state, setup, 60);
  CHECK(state.vessels.at("tube-1").trace.hottest_c <= hottest + 0.5);
  CHECK(state.vessels.at("tube-1").trace.seconds_in_flame == Approx(10).margin(0.5));
}

TEST_CASE("Carelessness is written down and warned of") {
  const Setup setup = test::setup();
  State state = with_tube(setup, 6);
  CHECK(perform(state, setup, in_flame(0.85, true, false)).caution.empty());
  CHECK(perform(state, setup, in_flame(0.85, false, true)).caution == "flame");
  advance(state, setup, 4);
  CHECK(state.vessels.at("tube-1").trace.seconds_pointed_at_person == Approx(4).margin(0.5));
  CHECK(state.vessels.at("tube-1").trace.seconds_held_still_in_flame == Approx(4).margin(0.5));
  CHECK(state.heated_without_goggles_s < 0);
  perform(state, setup, Protect{true, false});
  advance(state, setup, 1);
  CHECK(state.heated_without_goggles_s >= 0);
}

TEST_CASE("A tube held still in the flame bumps and loses liquid") {
  const Setup setup = test::setup();
  State still = with_tube(setup, 6);
  State moved = still;
  perform(still, setup, in_flame(0.6, false));
  perform(moved, setup, in_flame(0.6, true));
  advance(still, setup, 90);
  advance(moved, setup, 90);
  CHECK(still.vessels.at("tube-1").trace.boil_over_ml > 0.3);
  CHECK(moved.vessels.at("tube-1").trace.boil_over_ml < 0.3);
}

TEST_CASE("The bath takes minutes to boil and then heats a tube through") {
  const Setup setup = test::setup();
  State state = begin(setup);
  perform(state, setup, Pour{"specimen", "tube-1", 5, false});
  perform(state, setup, SetBath{100});
  advance(state, setup, 60);
  CHECK(state.bath_c < 60);
  advance(state, setup, 240);
  CHECK(state.bath_c == Approx(100));
  REQUIRE(perform(state, setup, Move{"tube-1", Place::Bath}).done);
  advance(state, setup, 300);
  CHECK(column::mean_temperature_c(state.vessels.at("tube-1").column) > 95);
  CHECK(state.vessels.at("tube-1").trace.seconds_in_bath == Approx(300).margin(1));
}

TEST_CASE("One tube at a time in the flame") {
  const Setup setup = test::setup();
  State state = with_tube(setup, 6);
  perform(state, setup, in_flame());
  perform(state, setup, Pour{"specimen", "tube-2", 6, false});
  CHECK(perform(state, setup, Move{"tube-2", Place::Flame}).refused_because ==
        "Take tube 1 out of the flame first.");
}
