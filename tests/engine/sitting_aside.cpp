// A replay lays vessels aside that the log is done with; nobody can tell afterwards.
#include "played_support.hpp"

#include "engine/scoring/prepared.hpp"
#include "engine/scoring/report_json.hpp"
#include "engine/sitting/aside.hpp"
#include "engine/sitting/session.hpp"
#include "engine/sitting/steps.hpp"
#include "sim/bench/bench.hpp"

#include <catch2/catch.hpp>

#include <filesystem>
#include <nlohmann/json.hpp>

using namespace matula;

namespace {

using Steps = std::vector<bench::Action>;

/// A tube heated and left to cool, one with acid, one that takes in both, and the rest of the specimen.
const Steps& before() {
  static const Steps all{bench::Protect{true, true},
                         bench::Mix{"specimen", bench::Manner::Swirl, 5},
                         bench::Pour{"specimen", "tube-1", 6, false},
                         bench::Pour{"specimen", "tube-2", 3, false},
                         bench::LightFlame{true},
                         bench::Move{"tube-1", bench::Place::Flame, 0.85, false, true},
                         bench::Wait{60},
                         bench::Move{"tube-1", bench::Place::Rack, 0.85, false, true},
                         bench::LightFlame{false},
                         bench::Dispense{"ssa_3", "tube-2", 3, false},
                         bench::Mix{"tube-2", bench::Manner::Invert, 3},
                         bench::Wait{7.3}};
  return all;
}

void work(sitting::Session& session, const Steps& steps) {
  for (const auto& step : steps) {
    const auto outcome = session.take({session.time_s(), step});
    INFO(outcome.refused_because);
    CHECK(outcome.done);
  }
}

std::uint64_t hash(const sitting::Session& session) {
  return bench::state_hash(session.state());
}

} // namespace

TEST_CASE("A vessel laid aside and taken up again is, to the last bit, as if it had stood there") {
  const auto scenario = test::load_case("heavy_protein");
  sitting::Session stood(test::world(), scenario);
  sitting::Session aside(test::world(), scenario);
  work(stood, before());
  work(aside, before());
  for (const char* const vessel : {"tube-1", "tube-2", "specimen", "water"}) {
    aside.lay_aside(vessel);
  }
  CHECK(hash(aside) != hash(stood));
  CHECK(aside.state().vessels.at("tube-2").column.volume_ml() == 0);
  CHECK(aside.state().vessels.at("tube-2").trace.additions.size() == 2);
  const Steps meanwhile{bench::Wait{1234.56}, bench::Dispense{"benedict", "tube-3", 5, false},
                        bench::SetBath{100}, bench::Wait{700.1}};
  work(stood, meanwhile);
  work(aside, meanwhile);
  for (const char* const vessel : {"water", "specimen", "tube-2", "tube-1"}) {
    aside.take_up(vessel);
  }
  CHECK(hash(aside) == hash(stood));
}

TEST_CASE("A vessel that is aside is taken up by whatever needs it") {
  const auto scenario = test::load_case("heavy_protein");
  sitting::Session stood(test::world(), scenario);
  work(stood, before());
  const auto session = [&] {
    sitting::Session one(test::world(), scenario);
    work(one, before());
    one.lay_aside("tube-2");
    one.lay_aside("specimen");
    return one;
  };
  const appearance::View view{appearance::Card::Black, optics::Lamp::Daylight};
  SECTION("an action") {
    auto aside = session();
    const Steps then{bench::Wait{100}, bench::Pour{"specimen", "tube-2", 1, false}, bench::Wait{30}};
    work(stood, then);
    work(aside, then);
    CHECK(hash(aside) == hash(stood));
  }
  SECTION("a look") {
    auto aside = session();
    work(stood, {bench::Wait{100}});
    work(aside, {bench::Wait{100}});
    CHECK(aside.look("tube-2", view).level_mm == stood.look("tube-2", view).level_mm);
    CHECK(aside.look("tube-2", view).level_mm > 0);
  }
  SECTION("the whole bench in a picture") {
    auto aside = session();
    work(stood, {bench::Wait{100}});
    work(aside, {bench::Wait{100}});
    CHECK(aside.scene(view).vessels.size() == stood.scene(view).vessels.size());
    CHECK(hash(aside) == hash(stood));
  }
}

TEST_CASE("What is hot, floats or stands elsewhere is not laid aside") {
  sitting::Session session(test::world(), test::load_case("heavy_protein"));
  const auto volume_ml = [&](const char* vessel) {
    return session.state().vessels.at(vessel).column.volume_ml();
  };
  work(session, {bench::Protect{true, true}, bench::Pour{"specimen", "tube-1", 6, false}});
  session.lay_aside("tube-1"); // Not lived yet: its trace does not know how warm it is.
  CHECK(volume_ml("tube-1") > 0);
  work(session,
       {bench::SetBath{90}, bench::Move{"tube-1", bench::Place::Bath, 0.85, false, true}, bench::Wait{400}});
  session.lay_aside("tube-1");
  CHECK(volume_ml("tube-1") > 0);
  work(session,
       {bench::Pour{"specimen", "jar", 45, false}, bench::Float{"jar", true, true}, bench::Wait{60}});
  session.lay_aside("jar");
  CHECK(volume_ml("jar") > 0);
  work(session, {bench::LiftFloat{}});
  session.lay_aside("jar");
  CHECK(volume_ml("jar") == 0);
}

TEST_CASE("Every action's vessels are known") {
  CHECK(sitting::named_in(bench::Pour{"specimen", "tube-1", 1, false}) ==
        std::vector<bench::VesselName>{"specimen", "tube-1"});
  CHECK(sitting::named_in(bench::Dispense{"ssa_3", "tube-1", 1, false}) ==
        std::vector<bench::VesselName>{"tube-1"});
  CHECK(sitting::named_in(bench::Centrifuge{{"tube-1", "tube-2"}, 400, 300}) ==
        std::vector<bench::VesselName>{"tube-1", "tube-2"});
  CHECK(sitting::named_in(bench::DipPaper{"strip", "specimen", 1}) ==
        std::vector<bench::VesselName>{"specimen"});
  CHECK(sitting::named_in(bench::BlotPaper{"strip-1"}).empty());
  CHECK(sitting::named_in(bench::Filter{"tube-1", "tube-2", 3, true}) ==
        std::vector<bench::VesselName>{"tube-1", "tube-2"});
}

TEST_CASE("Marks of sittings are the same with vessels laid aside, byte for byte") {
  namespace fs = std::filesystem;
  const fs::path steps_folder = fs::path(MATULA_SOURCE_DIR) / "scenarios" / "steps";
  // Between them: flame, bath, float, filter, papers and the Esbach tube, done well and badly.
  const auto name = GENERATE(as<std::string>(), "after_the_marathon.flawed", "pale_stools", "frothy_ankles",
                             "burning_cystitis.flawed");
  CAPTURE(name);
  const auto scenario = test::load_case(name.substr(0, name.find('.')));
  const auto log = sitting::read_steps(steps_folder / (name + ".jsonl"));
  REQUIRE(log.has_value());
  sitting::Session session(test::world(), scenario);
  const auto lived = scoring::score(test::world(), test::standards(), scenario, *log, session, {});
  const auto laid = scoring::score(test::world(), test::standards(), scenario, *log);
  CHECK(scoring::to_json(laid) == scoring::to_json(lived));
}
