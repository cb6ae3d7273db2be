// The instructor's room behind the window: a store opened, a folder taken in, a sitting on the bench again.

#include "engine/classroom/recording.hpp"
#include "engine/judging/view_json.hpp"
#include "sim/bench/bench.hpp"
#include "tests/engine/classroom_support.hpp"

using namespace matula;
using classroom::Classroom;
using classroom::Playback;
using test::wait_for;

namespace {

/// A sitting with heat, waits, ticks, a refused act and a slip: a strong reagent without goggles.
std::string busy_log() {
  return test::log_of("tiny", test::tiny_scenario, R"({"do": "protect", "gloves": true, "goggles": true}
{"do": "mix", "vessel": "specimen", "seconds": 5}
{"do": "pour", "from": "specimen", "to": "tube-1", "volume_ml": 9}
{"do": "flame", "on": true}
{"do": "move", "vessel": "tube-1", "place": "flame", "height": 0.85}
{"do": "wait", "seconds": 40}
{"do": "protect", "gloves": true, "goggles": false}
{"do": "wait", "seconds": 20}
{"do": "move", "vessel": "tube-1", "place": "rack"}
{"do": "pour", "from": "tube-9", "to": "tube-2", "volume_ml": 3}
{"do": "pour", "from": "specimen", "to": "tube-4", "volume_ml": 3}
{"do": "dispense", "reagent": "ssa_3", "to": "tube-4", "volume_ml": 3}
{"do": "mix", "vessel": "tube-4", "manner": "invert", "seconds": 5}
{"do": "wait", "seconds": 0}
{"do": "wait", "seconds": 595}
{"do": "look", "vessel": "tube-4", "card": "black"}
{"do": "smell", "vessel": "specimen"}
{"do": "record", "item": "ssa.grade", "value": "negative"}
{"do": "record", "item": "ssa.grade", "value": "1+"}
{"do": "record", "item": "decision.protein", "value": "no"}
{"do": "finish"}
)");
}

std::shared_ptr<const classroom::Recording>
recording_of(const std::string& log_text, const std::string& scenario_text, const std::string& key) {
  const auto scenario = scenario::parse(scenario_text, key + ".toml", test::world().catalogue);
  const auto log = sitting::parse_log(log_text, "log");
  REQUIRE(scenario);
  REQUIRE(log);
  const auto report = scoring::score(test::world(), test::standards(), *scenario, log->events);
  return std::make_shared<const classroom::Recording>(
      classroom::make_recording(test::world(), test::standards(), *scenario, log->events, report));
}

/// The bench after each number of lines, each replayed from the start by the marks' own code.
std::vector<std::uint64_t> states_of(const classroom::Recording& recording) {
  std::vector<std::uint64_t> states;
  for (std::size_t n = 0; n <= recording.events.size(); ++n) {
    sitting::Session session(test::world(), recording.scenario);
    const std::vector<sitting::Event> part(recording.events.begin(),
                                           recording.events.begin() + static_cast<std::ptrdiff_t>(n));
    (void)scoring::score(test::world(), test::standards(), recording.scenario, part, session, {});
    states.push_back(bench::state_hash(session.state()));
  }
  return states;
}

} // namespace

TEST_CASE("a playback is the marks' own replay at every line, forwards, backwards and by jumps",
          "[classroom]") {
  const auto recording = recording_of(busy_log(), test::tiny_scenario, "tiny");
  const auto states = states_of(*recording);
  Playback playback(recording);
  REQUIRE(playback.lines().size() + 1 == states.size());
  CHECK(playback.state_hash() == states[0]);
  while (playback.done() < playback.lines().size()) {
    playback.step();
    CHECK(playback.state_hash() == states[playback.done()]);
  }
  CHECK(playback.at_end());
  while (playback.done() > 0) {
    playback.step_back();
    CHECK(playback.state_hash() == states[playback.done()]);
  }
  for (const std::size_t n : {7U, 3U, 15U, 14U, 21U, 1U, 0U, 20U, 99U}) {
    playback.jump(n);
    CHECK(playback.done() == std::min<std::size_t>(n, recording->events.size()));
    CHECK(playback.state_hash() == states[playback.done()]);
  }
}

TEST_CASE(
    "played at any speed, and however the frames fall, a playback ends at the marked bench, bit for bit",
    "[classroom]") {
  const auto recording = recording_of(busy_log(), test::tiny_scenario, "tiny");
  sitting::Session marked(test::world(), recording->scenario);
  (void)scoring::score(test::world(), test::standards(), recording->scenario, recording->events, marked, {});
  for (const double speed : {16.0, 60.0, 600.0, 7777.7}) {
    Playback playback(recording);
    playback.set_speed(speed);
    playback.play();
    int frames = 0;
    double before = 0;
    while (playback.playing() && frames < 200000) {
      playback.advance(frames % 3 == 0 ? 0.033 : 0.0171);
      CHECK(playback.time_s() >= before);
      before = playback.time_s();
      ++frames;
    }
    CAPTURE(speed, frames);
    CHECK(playback.at_end());
    CHECK(playback.state_hash() == bench::state_hash(marked.state()));
    CHECK(playback.time_s() == marked.time_s());
    // What is seen is what was marked.
    const auto shown = playback.scene({});
    const auto there = bench::make_scene(marked.state(), marked.setup(), {});
    REQUIRE(shown.vessels.size() == there.vessels.size());
    CHECK(shown.time_s == there.time_s);
  }
}

TEST_CASE("a wait is watched at the playback's own pace, and a long frame does not run away", "[classroom]") {
  const auto recording = recording_of(busy_log(), test::tiny_scenario, "tiny");
  Playback playback(recording);
  playback.jump(5); // The tube has just gone into the flame.
  const double from_s = playback.time_s();
  playback.play();
  playback.advance(0.2);
  CHECK(playback.done() == 6); // The wait has begun,
  CHECK(playback.time_s() == Approx(from_s + 0.2));
  CHECK(playback.scene({}).time_s == Approx(from_s + 0.2).margin(1e-5)); // and the bench is not at its end.
  playback.advance(100);
  CHECK(playback.time_s() == Approx(from_s + 0.2 + 0.25));
  playback.pause();
  const double there_s = playback.time_s();
  playback.advance(5);
  CHECK(playback.time_s() == there_s);
}

TEST_CASE("each line is told in words, with what the bench answered and the marks that stand there",
          "[classroom]") {
  const auto recording = recording_of(busy_log(), test::tiny_scenario, "tiny");
  const auto& lines = recording->lines;
  CHECK(lines[2].words == "pours 9 mL from the specimen into tube 1");
  CHECK(lines[4].words.find("puts tube 1 into the flame, its upper part, in motion") == 0);
  CHECK(lines[9].refused);
  CHECK(lines[9].answer.find("Not done: ") == 0);
  CHECK(lines[11].words.find("adds 3 mL ") == 0);
  CHECK(lines[13].tick);
  CHECK(lines[14].words == "waits 9 min 55 s");
  CHECK(lines[15].words == "looks at tube 4 against black, by daylight");
  CHECK_FALSE(lines[16].answer.empty());
  CHECK(lines[19].words == "writes \"Is protein present? No\"");
  CHECK(lines.back().words == "hands the worksheet in");

  // A reading that was corrected is marked where it was written last; the decision where it was made.
  const auto has = [](const classroom::Line& line, const std::string& item) {
    return std::any_of(line.marks.begin(), line.marks.end(),
                       [&](const auto& one) { return one.mark.item == item; });
  };
  CHECK_FALSE(has(lines[17], "ssa.grade"));
  CHECK(has(lines[18], "ssa.grade"));
  CHECK(has(lines[18], "process.ssa"));
  CHECK(has(lines[19], "decision.protein"));
  // Every mark stands somewhere, once.
  std::size_t placed = recording->elsewhere.size();
  for (const auto& line : lines) {
    placed += line.marks.size();
  }
  const auto report =
      scoring::score(test::world(), test::standards(), recording->scenario, recording->events);
  CHECK(placed == report.marks.size());
  // Goggles came off with the tube in the flame, at the seventh line.
  CHECK(has(lines[6], "safety.goggles"));
}

TEST_CASE("a folder is taken in beside the open view, which then shows what the command line would",
          "[classroom]") {
  const test::Scratch scratch("matula_classroom");
  for (const auto* who : {"red-fox", "grey-owl", "elk-3"}) {
    test::spill(scratch / "in" / who / "tiny-1.jsonl",
                test::tiny_log(who[0] == 'g' ? "negative" : "2+", who[0] == 'g' ? "no" : "yes"));
  }
  test::spill(scratch / "own" / "tiny.toml", test::tiny_scenario);
  Classroom room(test::world(), test::standards(), assets::folder());
  const std::string store = scratch / "class.db";
  room.open(store);
  REQUIRE(wait_for(room, [&] { return room.page().has_value(); }));
  CHECK(room.page()->all_sittings == 0);
  classroom::ImportOrder order;
  order.folder = scratch / "in";
  order.scenarios = {scratch / "own"};
  order.label = "spring";
  order.now_s = 1800000000;
  room.import(order);
  REQUIRE(wait_for(room, [&] { return room.import_end() && room.page()->all_sittings == 3; }));
  CHECK(room.import_end()->sum->fresh == 3);
  CHECK(room.import_end()->words().find("3 new") != std::string::npos);

  records::Store other(store);
  const auto basis = judging::load_basis(assets::folder());
  REQUIRE(basis);
  CHECK(judging::to_json(room.page()->view) == judging::to_json(judging::judge(other, {}, *basis)));
  CHECK(room.page()->labels == std::vector<std::string>{"spring"});

  room.look({"", "", "grey-owl"});
  REQUIRE(wait_for(room, [&] { return room.page()->view.sittings == 1; }));
  room.look({});
  REQUIRE(wait_for(room, [&] { return room.page()->view.sittings == 3; }));

  room.open_sitting(room.page()->sittings[1].number);
  REQUIRE(wait_for(room, [&] { return room.sitting() && room.sitting()->explained; }));
  CHECK_FALSE(room.sitting()->other_rules);
  CHECK(room.sitting()->report.standing.mean == room.sitting()->row.standing.mean);
  CHECK_FALSE(room.sitting()->why.empty());

  SECTION("files are written and never written over") {
    classroom::ExportOrder report;
    report.folder = scratch / "written";
    report.now_s = 1800000000;
    room.write(report);
    REQUIRE(wait_for(room, [&] { return !room.written().empty(); }));
    const std::string first = room.written();
    CHECK(first == (scratch / "written" / "2027-01-15-report.html"));
    CHECK(test::slurp(first).find("red-fox") != std::string::npos);
    room.write(report);
    REQUIRE(wait_for(room, [&] { return !room.written().empty(); }));
    CHECK(room.written() == (scratch / "written" / "2027-01-15-report-2.html"));
    for (const auto& kind : classroom::export_kinds()) {
      report.what = kind.what;
      room.write(report);
      REQUIRE(wait_for(room, [&] { return !room.written().empty(); }));
      CHECK(std::filesystem::exists(room.written()));
    }
  }
  SECTION("names are called where the list has them") {
    other.set_names({{"red-fox", "Ada Example"}});
    room.look({});
    REQUIRE(wait_for(room, [&] { return !room.page()->names.empty(); }));
    CHECK(room.page()->call("red-fox", true) == "Ada Example (red-fox)");
    CHECK(room.page()->call("red-fox", false) == "red-fox");
    CHECK(room.page()->call("elk-3", true) == "elk-3");
  }
}

TEST_CASE("an import that is stopped keeps what it has, and the next one brings the rest", "[classroom]") {
  const test::Scratch scratch("matula_classroom_stop");
  constexpr int sittings = 60;
  for (int i = 0; i < sittings; ++i) {
    test::spill(scratch / "in" / ("student-" + std::to_string(i)) / "tiny-1.jsonl",
                test::tiny_log("2+", "yes", 500 + i));
  }
  test::spill(scratch / "own" / "tiny.toml", test::tiny_scenario);
  Classroom room(test::world(), test::standards(), assets::folder());
  room.open(scratch / "class.db");
  REQUIRE(wait_for(room, [&] { return room.page().has_value(); }));
  classroom::ImportOrder order;
  order.folder = scratch / "in";
  order.scenarios = {scratch / "own"};
  room.import(order);
  REQUIRE(wait_for(room, [&] { return room.work_state().done >= 5; }));
  room.stop_work();
  REQUIRE(wait_for(room, [&] { return room.import_end().has_value(); }));
  CHECK(room.import_end()->stopped);
  CHECK(room.import_end()->words().find("Stopped after") == 0);
  const auto kept = static_cast<int>(room.import_end()->done);
  REQUIRE(wait_for(room, [&] { return room.page()->all_sittings == kept; }));
  CHECK(kept < sittings);
  room.import(order);
  REQUIRE(wait_for(room, [&] { return room.import_end() && room.page()->all_sittings == sittings; }));
  CHECK(room.import_end()->sum->known == kept);
  CHECK(room.import_end()->sum->fresh == sittings - kept);
}

TEST_CASE("what cannot be done is said in words, and the room goes on", "[classroom]") {
  const test::Scratch scratch("matula_classroom_wrong");
  Classroom room(test::world(), test::standards(), assets::folder());
  test::spill(scratch / "letter.db", "Dear class, this is no store at all.");
  room.open(scratch / "letter.db");
  REQUIRE(wait_for(room, [&] { return !room.trouble().empty(); }));
  CHECK(room.trouble().find("no class store") != std::string::npos);
  CHECK_FALSE(room.page());
  room.open(scratch / "class.db");
  REQUIRE(wait_for(room, [&] { return room.page().has_value(); }));
  CHECK(room.trouble().empty());
  room.open_sitting(7);
  REQUIRE(wait_for(room, [&] { return !room.trouble().empty(); }));
  CHECK(room.trouble().find("no sitting 7") != std::string::npos);
  classroom::ImportOrder order;
  order.folder = scratch / "nowhere";
  room.import(order);
  REQUIRE(wait_for(room, [&] { return room.import_end().has_value(); }));
  CHECK(room.import_end()->words().find("no folder") != std::string::npos);
  CHECK_FALSE(room.work_state().running);
}
