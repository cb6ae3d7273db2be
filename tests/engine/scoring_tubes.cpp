#include "engine/scoring/tube_facts.hpp"

#include <catch2/catch.hpp>

using namespace matula;
using namespace matula::scoring;

namespace {

bench::VesselTrace::Addition added(double at, const char* what, double ml) {
  return {at, what, ml, false};
}

Rulebook book() {
  Rulebook rules;
  TestRule heat;
  heat.key = "heat";
  heat.scale = reading::ScaleKind::HeatCloud;
  heat.reagents = {"acetic_acid_10"};
  heat.strengths = {1};
  TestRule ssa;
  ssa.key = "ssa";
  ssa.scale = reading::ScaleKind::AcidCloud;
  ssa.reagents = {"ssa_3", "ssa_20"};
  ssa.strengths = {1, 6.67};
  TestRule benedict;
  benedict.key = "benedict";
  benedict.scale = reading::ScaleKind::CopperColour;
  benedict.reagents = {"benedict"};
  benedict.strengths = {1};
  rules.tests = {heat, ssa, benedict};
  return rules;
}

bench::State three_tubes() {
  bench::State state;
  state.vessels["specimen"];
  state.vessels["tube-1"].trace.additions = {added(10, "specimen", 9), added(100, "acetic_acid_10", 0.2)};
  state.vessels["tube-1"].trace.hottest_c = 100;
  state.vessels["tube-2"].trace.additions = {added(200, "specimen", 3), added(205, "ssa_3", 3)};
  state.vessels["tube-3"].trace.additions = {added(300, "benedict", 5), added(310, "specimen", 0.5)};
  state.vessels["tube-3"].trace.hottest_c = 100;
  return state;
}

} // namespace

TEST_CASE("Tests are known by what went into the tubes") {
  const auto rules = book();
  const auto state = three_tubes();
  CHECK(find_tube(state, rules, *rules.find_test("heat")) == "tube-1");
  CHECK(find_tube(state, rules, *rules.find_test("ssa")) == "tube-2");
  CHECK(find_tube(state, rules, *rules.find_test("benedict")) == "tube-3");
}

TEST_CASE("Reagent without specimen is no test, and a repeated test counts in its last tube") {
  const auto rules = book();
  auto state = three_tubes();
  state.vessels["tube-4"].trace.additions = {added(900, "benedict", 5)};
  CHECK(find_tube(state, rules, *rules.find_test("benedict")) == "tube-3");
  state.vessels["tube-5"].trace.additions = {added(950, "benedict", 5), added(960, "specimen", 0.5)};
  CHECK(find_tube(state, rules, *rules.find_test("benedict")) == "tube-5");
  state.vessels["tube-3"].trace.looked_at_s = {1200};
  CHECK(find_tube(state, rules, *rules.find_test("benedict")) == "tube-3");
}

TEST_CASE("A tube of cold urine alone is not a heat test") {
  const auto rules = book();
  bench::State state;
  state.vessels["tube-1"].trace.additions = {added(10, "specimen", 9)};
  state.vessels["tube-1"].trace.hottest_c = 22;
  CHECK(find_tube(state, rules, *rules.find_test("heat")).empty());
}

TEST_CASE("Specimen is followed from vessel to vessel, water kept apart") {
  bench::State state;
  state.vessels["jar"].trace.additions = {added(1, "specimen", 20), added(2, "water", 20)};
  state.vessels["tube-1"].trace.additions = {added(3, "jar", 4)};
  CHECK(urine_ml(state, "tube-1") == Approx(2.0));
  CHECK(water_ml(state, "tube-1") == Approx(2.0));
  state.vessels["jar"].trace.additions.push_back(
      added(4, "tube-1", 1)); // Poured back and forth: no endless loop.
  CHECK(urine_ml(state, "tube-1") > 0);
}

TEST_CASE("A stronger reagent counts for more") {
  const auto rules = book();
  bench::VesselTrace trace;
  trace.additions = {added(1, "ssa_20", 0.15), added(2, "specimen", 5)};
  CHECK(reagent_ml(trace, *rules.find_test("ssa")) == Approx(1.0005));
}

TEST_CASE("Facts of a Benedict tube: heat counts from when the urine went in") {
  const auto rules = book();
  auto state = three_tubes();
  state.time_s = 520;
  auto& trace = state.vessels["tube-3"].trace;
  trace.seconds_above_90c = 95;
  trace.seconds_in_flame = 130;
  trace.mixed_at_s = {315};
  Watch watch;
  watch.additions["tube-3"] = {{"benedict", 300, 0, 0}, {"specimen", 310, 20, 40}};
  const auto facts = tube_facts(state, "tube-3", *rules.find_test("benedict"), watch, 0.05);
  CHECK(facts.at("seconds_above_90c_with_urine") == 75);
  CHECK(facts.at("reagent_heated_alone") == 1);
  CHECK(facts.at("mixed_after_last_addition") == 1);
  CHECK(facts.at("seconds_since_last_addition") == 210);
  CHECK(facts.at("urine_ml") == Approx(0.5));
  CHECK(facts.at("reagent_ml") == Approx(5));
  CHECK(facts.at("heated_s") == 130);
  CHECK(facts.count("looked_on_black") == 0);
}

TEST_CASE("Facts of a heat tube: order of acid and boiling") {
  const auto rules = book();
  const auto& heat = *rules.find_test("heat");
  auto state = three_tubes();
  state.vessels["tube-1"].trace.seconds_above_90c = 80;
  Watch watch;
  watch.additions["tube-1"] = {{"specimen", 10, 0, 0}, {"acetic_acid_10", 100, 60, 90}};
  watch.cards["tube-1"] = {appearance::Card::White};
  auto facts = tube_facts(state, "tube-1", heat, watch, 0.05);
  CHECK(facts.at("acid_drops") == 4);
  CHECK(facts.at("acid_after_boiling") == 1);
  CHECK(facts.at("hot_after_acid_s") == 20);
  CHECK(facts.at("looked_on_black") == 0);
  watch.additions["tube-1"][1].seconds_above_90c = 0;
  facts = tube_facts(state, "tube-1", heat, watch, 0.05);
  CHECK(facts.at("acid_after_boiling") == 0);
}

TEST_CASE("Safety adds up what every tube went through, emptied ones too") {
  bench::State state = three_tubes();
  state.vessels["tube-1"].trace.seconds_pointed_at_person = 3;
  state.flame_on = true;
  Watch watch;
  watch.pointed_at_person_s = 4;
  watch.flame_lit = watch.something_handled = true;
  const auto facts = safety_facts(state, watch);
  CHECK(facts.at("pointed_at_person_s") == 7);
  CHECK(facts.at("flame_left_on") == 1);
  CHECK(facts.at("handled_without_gloves") == 0);
}

TEST_CASE("Where there was no occasion nothing of safety is marked") {
  bench::State state = three_tubes();
  Watch watch;
  auto facts = safety_facts(state, watch);
  for (const char* fact : {"pointed_at_person_s", "heated_without_goggles", "handled_without_gloves",
                           "acid_without_goggles", "flame_left_on"}) {
    CAPTURE(fact);
    CHECK(facts.count(fact) == 0);
  }
  state.heated_without_goggles_s = 12; // in the bath, no flame lit
  watch.strong_reagents = watch.strong_reagents_without_goggles = 1;
  facts = safety_facts(state, watch);
  CHECK(facts.at("heated_without_goggles") == 1);
  CHECK(facts.at("acid_without_goggles") == 1);
}
