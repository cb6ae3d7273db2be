#include "engine/sitting/event_json.hpp"
#include "engine/sitting/log.hpp"
#include "engine/sitting/steps.hpp"
#include "engine/sitting/writer.hpp"
#include "engine/strict/file.hpp"

#include <catch2/catch.hpp>

#include <csignal>
#include <filesystem>
#include <fstream>
#include <sys/wait.h>
#include <unistd.h>

using namespace matula;
using sitting::Event;

namespace {

/// One event of every verb.
std::vector<Event> every_event() {
  std::vector<Event> events;
  const std::vector<bench::Action> actions{
      bench::Pour{"specimen", "tube-1", 0.1 + 0.2, true},
      bench::Dispense{"ssa_3", "tube-1", 3, false},
      bench::Mix{"tube-1", bench::Manner::Invert, 5},
      bench::Move{"tube-1", bench::Place::Flame, 0.7, true, false},
      bench::LightFlame{false},
      bench::SetBath{56},
      bench::Float{"jar", false, true},
      bench::LiftFloat{},
      bench::SpinFloat{},
      bench::ClearBubbles{},
      bench::Thermometer{"jar"},
      bench::Smell{"specimen"},
      bench::Look{"jar", {appearance::Card::Printed, optics::Lamp::Indoor}, 1e-7},
      bench::Protect{true, false},
      bench::Discard{"tube-1", bench::Bin::HeavyMetal},
      bench::Wait{0},
      bench::Refract{"jar", false},
      bench::Measure{"tube-1", 660, true},
      bench::Centrifuge{{"tube-1", "tube-2"}, 400.5, 300},
      bench::Filter{"specimen", "tube-3", 8.25, false},
      bench::SprinkleSulphur{"tube-2"},
      bench::Tap{"tube-2"},
      bench::Hood{false},
      bench::WipeSpill{true},
      bench::DipPaper{"strip", "specimen", 1.5},
      bench::BlotPaper{"strip-1"},
      bench::LookAtPaper{"strip-1"},
      bench::DropOn{"ph-2", "acetic_acid_10", 2},
      bench::DiscardPaper{"strip-1"},
      bench::LayPaper{}};
  double time_s = 0;
  for (const auto& action : actions) {
    events.push_back({time_s += 1.0 / 3, action});
  }
  events.push_back({time_s, sitting::Record{"colour", "yellow \"as straw\" µ\n"}});
  events.push_back({time_s, sitting::Finish{}});
  return events;
}

std::string whole_log(const std::vector<Event>& events) {
  std::string text = sitting::to_line(sitting::Header{1, "case", "case.toml", "0123", 9, "0"}) + "\n";
  for (const Event& event : events) {
    text += sitting::to_line(event) + "\n";
  }
  return text;
}

std::filesystem::path fresh_file(const char* name) {
  auto file =
      std::filesystem::temp_directory_path() / (std::string(name) + std::to_string(::getpid()) + ".jsonl");
  std::filesystem::remove(file);
  return file;
}

} // namespace

TEST_CASE("Every verb is written and read back to the same bits") {
  const auto events = every_event();
  CHECK(events.size() == sitting::verbs().size());
  const auto log = sitting::parse_log(whole_log(events), "log");
  if (!log) {
    FAIL(scenario::to_text(log.error()));
  }
  CHECK(log->header.seed == 9);
  REQUIRE(log->events.size() == events.size());
  for (std::size_t i = 0; i < events.size(); ++i) {
    CHECK(log->events[i].time_s == events[i].time_s);
    CHECK(sitting::to_line(log->events[i]) == sitting::to_line(events[i]));
  }
}

TEST_CASE("A log cut off anywhere in its last line keeps everything before it") {
  const auto events = every_event();
  const std::string text = whole_log(events);
  const std::size_t last = text.rfind('\n', text.size() - 2) + 1;
  for (std::size_t end = last; end < text.size(); ++end) {
    const auto log = sitting::parse_log(text.substr(0, end), "log");
    REQUIRE(log.has_value());
    CHECK(log->events.size() == events.size() - 1);
    CHECK(log->good_bytes == last);
    CHECK(log->cut_off == text.substr(last, end - last));
  }
}

TEST_CASE("A fault that is no cut-off end is a problem at its line") {
  const std::string head = whole_log({});
  const auto problem = [&](const std::string& line) {
    const auto log = sitting::parse_log(head + line + "\n", "log");
    REQUIRE_FALSE(log.has_value());
    REQUIRE(log.error().front().line == 2);
    return log.error().front();
  };
  CHECK(problem("{\"t\":1,\"do\":\"poor\"}").expected == "did you mean 'pour'?");
  CHECK(problem("{\"t\":1,\"do\":\"smell\",\"vessel\":\"jar\",\"vesel\":1}").found ==
        "unknown field \"vesel\"");
  CHECK(problem("{\"t\":1,\"do\":\"pour\",\"from\":\"a\",\"to\":\"b\"}").found == "no \"volume_ml\"");
  CHECK(problem("{\"t\":1,\"do\":\"pour\",\"from\":\"a\",\"to\":\"b\",\"volume_ml\":-1}").expected ==
        "a number from 0 to 1000");
  CHECK(problem("{\"do\":\"finish\"}").found == "no \"t\"");
  CHECK(problem("{\"t\":1,\"do\":\"record\",\"item\":\"color\",\"value\":\"x\"}").expected.find("'colour'") !=
        std::string::npos);
  CHECK(problem("half a line").found == "a line that is not a JSON object");
  CHECK_FALSE(sitting::parse_log("", "log").has_value());
  CHECK_FALSE(
      sitting::parse_log(head + "{\"t\":1,\"do\":\"finish\"}\n{\"t\":2,\"do\":\"lift_float\"}\n", "l"));
  CHECK_FALSE(
      sitting::parse_log(head + "{\"t\":2,\"do\":\"lift_float\"}\n{\"t\":1,\"do\":\"finish\"}\n", "l"));
}

TEST_CASE("Killed while writing, a log loses at most the event being written and goes on from there") {
  const auto file = fresh_file("matula_killed");
  int pipe_ends[2];
  REQUIRE(::pipe(pipe_ends) == 0);
  const pid_t child = ::fork();
  REQUIRE(child >= 0);
  if (child == 0) {
    auto writer = sitting::LogWriter::create(file, {});
    for (int i = 0; writer; ++i) {
      if (!writer->append({double(i), bench::Action(bench::Smell{"specimen"})}) ||
          ::write(pipe_ends[1], &i, sizeof i) != sizeof i) {
        break;
      }
    }
    ::_exit(1);
  }
  int acknowledged = -1;
  while (acknowledged < 20) {
    REQUIRE(::read(pipe_ends[0], &acknowledged, sizeof acknowledged) == sizeof acknowledged);
  }
  ::kill(child, SIGKILL);
  ::waitpid(child, nullptr, 0);
  ::close(pipe_ends[1]);
  int later = 0;
  while (::read(pipe_ends[0], &later, sizeof later) == sizeof later) {
    acknowledged = later;
  }
  ::close(pipe_ends[0]);
  std::ofstream(file, std::ios::app) << "{\"t\":99999,\"do\":\"sm"; // as a kill inside a write leaves it
  const auto log = sitting::read_log(file);
  REQUIRE(log.has_value());
  CHECK(int(log->events.size()) >= acknowledged + 1);
  CHECK(int(log->events.size()) <= acknowledged + 2);
  CHECK_FALSE(log->cut_off.empty());
  {
    auto writer = sitting::LogWriter::reopen(file, *log);
    REQUIRE(writer.has_value());
    CHECK(writer->append({1e5, sitting::Finish{}}));
  }
  const auto again = sitting::read_log(file);
  REQUIRE(again.has_value());
  CHECK(again->events.size() == log->events.size() + 1);
  CHECK(again->cut_off.empty());
  CHECK_FALSE(sitting::LogWriter::create(file, {}).has_value());
  std::filesystem::remove(file);
}

TEST_CASE("Steps may leave out the time, wait, and hold remarks") {
  const auto steps = sitting::parse_steps("# a remark\n\n{\"do\":\"lift_float\"}\n{\"wait\":120}\n", "steps");
  REQUIRE(steps.has_value());
  REQUIRE(steps->size() == 2);
  CHECK(std::get<bench::Wait>(std::get<bench::Action>((*steps)[1].what)).seconds == 120);
  CHECK_FALSE(sitting::parse_steps("{\"wait\":-1}\n{\"wiat\":1}\n", "steps").has_value());
  CHECK(sitting::parse_steps("{\"wait\":-1}\n{\"wiat\":1}\n", "steps").error().size() == 2);
  CHECK(sitting::read_steps(MATULA_SOURCE_DIR "/scenarios/first_case.steps.jsonl").has_value());
}

TEST_CASE("The log reader answers every seed of the fuzzer") {
  int read_files = 0;
  for (const auto& entry :
       std::filesystem::directory_iterator(MATULA_SOURCE_DIR "/tests/fuzz/seeds/sitting")) {
    std::string text;
    REQUIRE(strict::read_text(entry.path(), text));
    const auto log = sitting::parse_log(text, "seed");
    CHECK((log.has_value() || !scenario::to_text(log.error()).empty()));
    (void)sitting::parse_steps(text, "seed");
    ++read_files;
  }
  CHECK(read_files >= 3);
}
