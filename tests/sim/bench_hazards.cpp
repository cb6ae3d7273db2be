#include "bench_fixture.hpp"

#include "sim/bench/hazards.hpp"

#include <catch2/catch.hpp>

using namespace matula;
using namespace matula::bench;

namespace {

Setup stocked() {
  Setup s = test::setup();
  s.reagents_out = {"acetic_acid_glacial", "acetic_acid_10", "benedict", "ssa_20"};
  return s;
}

Vessel holding(std::vector<std::string> waste) {
  Vessel vessel;
  vessel.column.layers.emplace_back();
  vessel.column.layers.back().volume_ml = 5;
  merge_waste(vessel, waste);
  return vessel;
}

matter::Reagent bottle(const std::string& waste) {
  matter::Reagent reagent;
  reagent.waste = waste;
  return reagent;
}

} // namespace

TEST_CASE("A harmful bottle outside the hood, or near a flame, is noted with its time and a caution") {
  const Setup setup = stocked();
  State state = begin(setup);
  perform(state, setup, Hood{true});
  CHECK(perform(state, setup, Dispense{"acetic_acid_glacial", "tube-1", 1}).caution == "glacial_acetic");
  CHECK(state.hazards.outside_hood.times == 0);
  perform(state, setup, Hood{false});
  perform(state, setup, Wait{30});
  CHECK(perform(state, setup, Dispense{"acetic_acid_glacial", "tube-2", 1}).caution == "hood");
  CHECK(state.hazards.outside_hood.times == 1);
  CHECK(state.hazards.outside_hood.first_s == Approx(30));
  // Two tubes of it stand open in the room now: lighting the burner is the next fault.
  CHECK(perform(state, setup, LightFlame{true}).caution == "flammable");
  CHECK(state.hazards.flammable_near_flame.times == 1);
  perform(state, setup, Dispense{"acetic_acid_10", "tube-3", 1});
  CHECK(state.hazards.outside_hood.times == 1);
}

TEST_CASE("Every waste has its bin") {
  const Setup setup = stocked();
  State state = begin(setup);
  perform(state, setup, Dispense{"benedict", "tube-1", 5});
  perform(state, setup, Pour{"specimen", "tube-1", 0.5});
  perform(state, setup, Pour{"tube-1", "tube-2", 2}); // what is poured takes its word along
  CHECK(perform(state, setup, Discard{"tube-1", Bin::Sink}).caution == "waste");
  CHECK(perform(state, setup, Discard{"tube-2", Bin::HeavyMetal}).caution.empty());
  CHECK(state.hazards.wrong_bin.times == 1);
  perform(state, setup, Pour{"specimen", "tube-1", 3}); // rinsed: no copper any more
  CHECK(perform(state, setup, Discard{"tube-1", Bin::Sink}).caution.empty());
  perform(state, setup, Pour{"specimen", "tube-1", 3});
  CHECK(perform(state, setup, Discard{"tube-1", Bin::Biohazard}).caution.empty());
  CHECK(state.hazards.wrong_bin.times == 1);
  CHECK(perform(state, setup, Discard{"tube-5", Bin::Acid}).caution.empty()); // nothing in it
}

TEST_CASE("What must never meet") {
  State state;
  Vessel prusside = holding({"nitroprusside"});
  CHECK(open_bottle(state, bottle("acid"), prusside) == "cyanide");
  CHECK(throw_away(state, holding({"nitroprusside"}), Bin::Acid) == "cyanide");
  CHECK(state.hazards.cyanide_freed.times == 2);
  CHECK(throw_away(state, holding({"nitroprusside"}), Bin::Nitroprusside).empty());
  Vessel sour = holding({"acid"});
  CHECK(open_bottle(state, bottle("bleach"), sour) == "bleach");
  Vessel sharp = holding({"ammonia"});
  CHECK(open_bottle(state, bottle("bleach"), sharp) == "bleach");
  Vessel bleached = holding({"bleach"});
  CHECK(open_bottle(state, bottle("ammonia"), bleached) == "bleach");
  CHECK(state.hazards.chlorine_freed.times == 3);
  Vessel plain = holding({});
  CHECK(open_bottle(state, bottle("bleach"), plain).empty());
}

TEST_CASE("A spill lies there until it is wiped, and bleach on acid is worse than none") {
  const Setup setup = stocked();
  State state = begin(setup);
  CHECK_FALSE(perform(state, setup, WipeSpill{}).done);
  spill(state, holding({"acid"}), 1.5);
  CHECK(make_scene(state, setup, {}).spilled_ml == Approx(1.5));
  CHECK(perform(state, setup, WipeSpill{true}).caution == "bleach");
  CHECK(state.hazards.chlorine_freed.times == 1);
  CHECK(state.hazards.spilled_ml == 0);
  spill(state, holding({}), 1);
  CHECK(perform(state, setup, WipeSpill{true}).caution.empty());
  CHECK(state.hazards.spilled_all_ml == Approx(2.5));
}

TEST_CASE("A tube held still in the flame bumps, and what it throws lies on the bench") {
  const Setup setup = stocked();
  State state = begin(setup);
  perform(state, setup, Pour{"specimen", "tube-1", 9});
  perform(state, setup, LightFlame{true});
  perform(state, setup, Move{"tube-1", Place::Flame, 0.5, false, false});
  perform(state, setup, Wait{150});
  CHECK(state.vessels.at("tube-1").trace.boil_over_ml > 0);
  CHECK(state.hazards.spilled_ml == Approx(state.vessels.at("tube-1").trace.boil_over_ml));
}
