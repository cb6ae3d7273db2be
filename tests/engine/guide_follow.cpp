// The guided first case: followed by the worked example to its end, back at the same step after a pause, and
// unmoved by what does not belong to a step.
#include "engine/assets/world.hpp"
#include "engine/guide/follower.hpp"

#include "engine/sitting/event_json.hpp"
#include "engine/sitting/steps.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <fstream>
#include <iterator>
#include <unistd.h>

using namespace matula;
namespace fs = std::filesystem;

namespace {

const fs::path root = assets::folder().parent_path();

guide::Guide first_case() {
  const auto loaded = guide::load(guide::guide_file(root / "assets", root / "scenarios" / "first_case.toml"));
  INFO((loaded ? "" : scenario::to_text(loaded.error())));
  REQUIRE(loaded);
  return *loaded;
}

/// The worked example as events, with the bench's clock as the log would have it.
std::vector<sitting::Event> worked() {
  std::ifstream in(root / "scenarios" / "first_case.steps.jsonl");
  const std::string text{std::istreambuf_iterator<char>(in), {}};
  auto events = sitting::parse_steps(text, "first_case.steps.jsonl");
  REQUIRE(events);
  double now_s = 0;
  for (auto& event : *events) {
    event.time_s = std::max(event.time_s, now_s);
    if (const auto* action = std::get_if<bench::Action>(&event.what)) {
      if (const auto* wait = std::get_if<bench::Wait>(action)) {
        now_s = event.time_s + wait->seconds;
        continue;
      }
    }
    now_s = event.time_s;
  }
  return *events;
}

sitting::Event event(double time_s, bench::Action action) {
  return {time_s, std::move(action)};
}

tl::expected<guide::Guide, scenario::Problems> read(const std::string& text) {
  const auto file = fs::temp_directory_path() / ("guide-" + std::to_string(::getpid()) + ".toml");
  std::ofstream(file) << text;
  return guide::load(file);
}

} // namespace

TEST_CASE("the worked example goes through the guide to its end, part by part") {
  const auto guide = first_case();
  guide::Follower follower(guide);
  std::size_t part = 0;
  for (const auto& one : worked()) {
    follower.see(one);
    CHECK(follower.remark() == "");
    const auto now = follower.now().part;
    CHECK(now >= part);
    part = now;
  }
  const auto at = follower.now();
  CAPTURE(at.part, at.step);
  CHECK(follower.finished());
  CHECK(follower.steps_done() == follower.steps());
  CHECK(follower.vessel("$heat") == "tube-1");
  CHECK(follower.vessel("$acid") == "tube-2");
  CHECK(follower.vessel("$copper") == "tube-3");
}

TEST_CASE("help fades: no part says more than the first of its kind, and the last leaves the learner alone") {
  const auto guide = first_case();
  CHECK(guide.parts.front().help == guide::Help::EachStep);
  CHECK(guide.parts.back().help == guide::Help::Name);
  const auto goal = std::count_if(guide.parts.begin(), guide.parts.end(),
                                  [](const auto& part) { return part.help == guide::Help::Goal; });
  CHECK(goal >= 2);
}

TEST_CASE("a tube taken out of the flame too soon is not done, and it is said") {
  const auto guide = first_case();
  guide::Follower follower(guide);
  const auto all = worked();
  const auto out = std::find_if(all.begin(), all.end(), [](const auto& one) {
    const auto* action = std::get_if<bench::Action>(&one.what);
    const auto* move = action == nullptr ? nullptr : std::get_if<bench::Move>(action);
    return move != nullptr && move->place == bench::Place::Rack;
  });
  for (auto one = all.begin(); one != out; ++one) {
    follower.see(*one);
  }
  const auto before = follower.steps_done();
  const double lit_s = out->time_s - 85;
  follower.see(event(lit_s + 10, bench::Move{"tube-1", bench::Place::Rack, 0.85, false, true}));
  CHECK(follower.steps_done() == before);
  CHECK(follower.remark().find("too short") != std::string::npos);
  follower.see(event(lit_s + 85, bench::Move{"tube-1", bench::Place::Rack, 0.85, false, true}));
  CHECK(follower.steps_done() == before + 1);
  CHECK(follower.remark().empty());
}

TEST_CASE("another tube serves as well, and keeps its name; a step done out of turn is done") {
  const auto guide = first_case();
  guide::Follower follower(guide);
  follower.see(event(1, bench::Pour{"specimen", "tube-7", 9, false}));
  CHECK(follower.vessel("$heat") == "tube-7");
  CHECK(follower.now().part == 0);
  follower.see(event(2, bench::Pour{"specimen", "tube-8", 9, false})); // not the heat tube's step any more
  CHECK(follower.vessel("$heat") == "tube-7");
  CHECK(follower.steps_done() == 1);
  CHECK(guide::say(follower, "Hold $heat in the flame.") == "Hold tube 7 in the flame.");
  CHECK(guide::say(follower, "Pour it into $acid.") == "Pour it into a free tube.");
}

TEST_CASE("what does not belong to a step moves nothing") {
  const auto guide = first_case();
  guide::Follower follower(guide);
  follower.see(event(0, bench::Protect{true, false}));
  follower.see(event(1, bench::Pour{"specimen", "tube-1", 1, false}));
  follower.see(event(1, bench::Dispense{"water", "tube-1", 1, false}));
  CHECK(follower.steps_done() == 0);
}

TEST_CASE("a broken guide says where, what was found and what to write") {
  const auto wrong = read(R"(welcome = "a"
farewell = "b"
[[part]]
title = "t"
goal = "g"
help = "everything"
[[part.step]]
say = "s"
why = "w"
after_s = 3
done = { do = "pourr", volume_ml = "1 to 2" }
)");
  REQUIRE_FALSE(wrong);
  const auto text = scenario::to_text(wrong.error());
  INFO(text);
  CHECK(text.find("each step") != std::string::npos);
  CHECK(text.find("did you mean 'pour'") != std::string::npos);
  CHECK(text.find("too_early") != std::string::npos);
}
