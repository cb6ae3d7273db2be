#include "scenario_words.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>
#include <sys/wait.h>
#include <unistd.h>

// Runs the built program as a person would.

namespace {

namespace fs = std::filesystem;

struct Answer {
  int code = -1;
  std::string out;
  std::string err;
};

std::string slurp(const fs::path& file) {
  std::ifstream in(file, std::ios::binary);
  std::ostringstream text;
  text << in.rdbuf();
  return text.str();
}

fs::path scratch() {
  static const fs::path folder = [] {
    auto path = fs::temp_directory_path() / ("matula_command_" + std::to_string(::getpid()));
    fs::create_directories(path);
    return path;
  }();
  return folder;
}

Answer call(const std::string& words) {
  const auto out = scratch() / "out";
  const auto err = scratch() / "err";
  const std::string line = std::string("MATULA_ASSETS=") + MATULA_SOURCE_DIR +
                           "/assets DISPLAY= " + MATULA_PROGRAM + " " + words + " >" + out.string() + " 2>" +
                           err.string() + " </dev/null";
  const int status = std::system(line.c_str());
  return {WIFEXITED(status) ? WEXITSTATUS(status) : -1, slurp(out), slurp(err)};
}

fs::path write(const std::string& name, const std::string& text) {
  const auto path = scratch() / name;
  std::ofstream(path, std::ios::binary) << text;
  return path;
}

// One test only, so that a call is quick.
const std::string scenario_text = matula::test::in_words({.title = "Albumin for the acid test",
                                                          .dissolved = "albumin = \"300 mg/dL\"\n",
                                                          .reagents = R"("ssa_3", "acetic_acid_10")",
                                                          .tests = R"("ssa")",
                                                          .decision = matula::test::protein_decision});

std::string plain_scenario() {
  return write("albumin.toml", scenario_text).string();
}

nlohmann::json play(const std::string& steps) {
  const auto answer =
      call("play " + plain_scenario() + " " + write("steps.jsonl", steps).string() + " --json");
  INFO(answer.err);
  REQUIRE(answer.code == 0);
  return nlohmann::json::parse(answer.out);
}

nlohmann::json mark_of(const nlohmann::json& report, const std::string& item) {
  for (const auto& mark : report.at("marks")) {
    if (mark.at("item") == item) {
      return mark;
    }
  }
  return nullptr;
}

const std::string acid_test = R"({"do": "protect", "gloves": true, "goggles": true}
{"do": "mix", "vessel": "specimen", "seconds": 5}
{"do": "pour", "from": "specimen", "to": "tube-4", "volume_ml": 3}
{"do": "dispense", "reagent": "ssa_3", "to": "tube-4", "volume_ml": 3}
{"do": "mix", "vessel": "tube-4", "manner": "invert", "seconds": 5}
{"do": "wait", "seconds": 595}
{"do": "look", "vessel": "tube-4", "card": "black"}
)";

} // namespace

TEST_CASE("Help is given on standard output for the program and each verb") {
  const auto help = call("--help");
  CHECK(help.code == 0);
  CHECK(help.err.empty());
  for (const char* verb : {"check", "play", "score", "picture", "ladder", "progress", "drill", "quiz"}) {
    CAPTURE(verb);
    CHECK(help.out.find(verb) != std::string::npos);
    const auto answer = call(std::string(verb) + " --help");
    CHECK(answer.code == 0);
    CHECK(answer.out.find("Usage") != std::string::npos);
    CHECK(answer.err.empty());
  }
}

TEST_CASE("Help is also a word, and a slip in a verb is told with the verb that was meant") {
  CHECK(call("help").out == call("--help").out);
  CHECK(call("help").code == 0);
  CHECK(call("help seal").out == call("seal --help").out);
  CHECK(call("help class show").out == call("class show --help").out);
  const auto meant = [](const std::string& words) {
    const auto answer = call(words);
    CHECK(answer.code == 2);
    CHECK(answer.out.empty());
    return answer.err;
  };
  CHECK(meant("chek a.toml").find("did you mean 'check'?") != std::string::npos);
  CHECK(meant("class shows").find("did you mean 'show'?") != std::string::npos);
  CHECK(meant("keys brew").find("no verb 'keys brew'; expected one of: new, show") != std::string::npos);
}

TEST_CASE("A wrong call exits 2 and says why on standard error only") {
  for (const char* words :
       {"brew", "check", "play one.toml", "ladder", "ladder alchemy", "ladder ssa --at minus", "drill",
        "drill juggling", "drill ring --count 0", "quiz", "picture a.toml b.jsonl",
        "picture a.toml b.jsonl -o c.png --size big", "--at 3"}) {
    CAPTURE(words);
    const auto answer = call(words);
    CHECK(answer.code == 2);
    CHECK(answer.out.empty());
    CHECK_FALSE(answer.err.empty());
  }
}

TEST_CASE("Bad input exits 1 and says why on standard error only") {
  const auto broken = write("broken.toml", "title = 3\n[specimen]\nph = 30\n");
  for (const std::string& words :
       {"check " + broken.string(), std::string("check no_such_file.toml"),
        "play " + broken.string() + " none.jsonl", std::string("score no_such_sitting"),
        std::string("progress no_such_record"), std::string("quiz no_such_blueprint"),
        "quiz " + broken.string(),
        "picture " + broken.string() + " none.jsonl -o " + (scratch() / "never.png").string()}) {
    CAPTURE(words);
    const auto answer = call(words);
    CHECK(answer.code == 1);
    CHECK(answer.out.empty());
    CHECK_FALSE(answer.err.empty());
  }
  CHECK_FALSE(fs::exists(scratch() / "never.png"));
}

TEST_CASE("Progress is told from a record, in words and as JSON, and a spoilt line is named") {
  const auto record = write("record.jsonl",
                            R"({"matula_record":1}
{"when_s":1767225600,"from":"drill","skill":"turbidity","unknown":"u","difficulty":0.0,"credit":1000,"written":"1+","expected":"1+","test":"ssa","intensity":2.1,"grade":2}
{"when_s":1767225601,"from":"drill","skill":"corrections","unknown":"corrections/zero/plain/0/1","difficulty":0.0,"credit":0,"written":"","expected":""}
spoilt
)");
  const auto told = call("progress " + record.string());
  CHECK(told.code == 0);
  CHECK(told.out.rfind("What to change tomorrow\n  A rule is due again: zero.", 0) == 0);
  CHECK(told.out.find("clouds of protein: 1 reading, too few to tell") != std::string::npos);
  CHECK(told.err.find(":4:") != std::string::npos);
  const auto json = nlohmann::json::parse(call("progress --json " + record.string()).out);
  CHECK(json.at("skills").size() == 2);
  CHECK(json.at("skills").at(1).at("graded").at("readings") == 1);
  CHECK(json.at("rules").at(0).at("due") == true);
}

TEST_CASE("A drill prints its unknowns and draws those that have a picture; the same seed gives the same") {
  const auto folder = scratch() / "unknowns";
  const auto drill = call("drill copper --seed 4 --count 2 -o " + folder.string());
  INFO(drill.err);
  CHECK(drill.code == 0);
  CHECK(std::count(drill.out.begin(), drill.out.end(), '\n') == 2);
  CHECK(drill.out.rfind("copper/benedict/", 0) == 0);
  CHECK(slurp(folder / "unknown-2.png").rfind("\x89PNG", 0) == 0);
  CHECK(call("drill copper --seed 4 --count 2").out == drill.out);
  CHECK(call("drill copper --seed 5 --count 1").out == drill.out.substr(drill.out.find('\n') + 1));
}

TEST_CASE("A quiz prints its set, another seed another one as long") {
  const auto quiz = call("quiz at_the_counter");
  INFO(quiz.err);
  CHECK(quiz.code == 0);
  CHECK(std::count(quiz.out.begin(), quiz.out.end(), '\n') == 10);
  const auto other = call("quiz at_the_counter --seed 2");
  CHECK(std::count(other.out.begin(), other.out.end(), '\n') == 10);
  CHECK(other.out != quiz.out);
}

TEST_CASE("A ladder prints its table with the agreed head and a word of the trade in every row") {
  const auto answer = call("ladder ssa --at 0,1000 --csv");
  REQUIRE(answer.code == 0);
  CHECK(answer.err.empty());
  std::istringstream lines(answer.out);
  std::string line;
  REQUIRE(std::getline(lines, line));
  CHECK(line.rfind("concentration_mg_per_dl,reading,", 0) == 0);
  const std::size_t columns = static_cast<std::size_t>(std::count(line.begin(), line.end(), ','));
  int rows = 0;
  while (std::getline(lines, line)) {
    ++rows;
    CHECK(static_cast<std::size_t>(std::count(line.begin(), line.end(), ',')) == columns);
    const auto from = line.find(',') + 1;
    const auto word = line.substr(from, line.find(',', from) - from);
    const std::string words = "negative trace 1+ 2+ 3+ 4+";
    CHECK(words.find(word) != std::string::npos);
  }
  CHECK(rows == 2);
}

TEST_CASE("Playing nothing gives parsable JSON with no marks for readings and a reason for each loss") {
  const auto steps = write("nothing.jsonl", "{\"t\": 1, \"do\": \"finish\"}\n");
  const auto answer = call("play " + plain_scenario() + " " + steps.string() + " --json");
  REQUIRE(answer.code == 0);
  CHECK(answer.err.empty());
  const auto report = nlohmann::json::parse(answer.out);
  CHECK(report.at("handed_in") == true);
  CHECK(report.at("safety_stop") == false);
  CHECK(report.at("ledgers").at("reading").at("earned") == 0);
  CHECK(report.at("ledgers").at("process").at("earned") == 0);
  CHECK(report.at("ledgers").at("interpretation").at("earned") == 0);
  for (const auto& mark : report.at("marks")) {
    CAPTURE(mark.at("item").get<std::string>());
    if (mark.at("earned") < mark.at("possible")) {
      CHECK_FALSE(mark.at("reason").get<std::string>().empty());
    }
  }
}

TEST_CASE("The same log gives the same report twice") {
  const auto steps = write(
      "twice.jsonl", "{\"do\": \"pour\", \"from\": \"specimen\", \"to\": \"tube-1\", \"volume_ml\": 3}\n"
                     "{\"do\": \"record\", \"item\": \"ssa.grade\", \"value\": \"1+\"}\n");
  const auto words = "play " + plain_scenario() + " " + steps.string() + " --json";
  const auto once = call(words);
  REQUIRE(once.code == 0);
  CHECK(once.out == call(words).out);
}

TEST_CASE("A bad line in the steps is reported with its number") {
  const auto steps = write("bad.jsonl", "{\"t\": 1, \"do\": \"finish\"}\n{\"t\": 2, \"do\": \"dance\"}\n");
  const auto answer = call("play " + plain_scenario() + " " + steps.string());
  CHECK(answer.code == 1);
  CHECK(answer.err.find(":2") != std::string::npos);
}

TEST_CASE(
    "The acid test by the book keeps every mark of procedure and safety, and the grade its tube shows") {
  const auto blank = play(acid_test);
  const std::string shown = mark_of(blank, "ssa.grade").at("expected");
  CHECK(shown != "negative");
  const auto report =
      play(acid_test + "{\"do\": \"record\", \"item\": \"ssa.grade\", \"value\": \"" + shown + "\"}\n" +
           "{\"do\": \"record\", \"item\": \"decision.protein\", \"value\": \"yes\"}\n");
  for (const auto& [ledger, sums] : report.at("ledgers").items()) {
    CAPTURE(ledger);
    CHECK(sums.at("earned") == sums.at("possible"));
  }
  CHECK(report.at("tubes").at(0).at("learner_vessel") == "tube-4");
}

TEST_CASE("A misread tube and a hasty test lose marks in different ledgers, each with its sentence") {
  std::string hasty = acid_test;
  hasty.replace(hasty.find("595"), 3, "20");
  const auto report =
      play(hasty + "{\"do\": \"record\", \"item\": \"ssa.grade\", \"value\": \"negative\"}\n");
  const auto grade = mark_of(report, "ssa.grade");
  CHECK(grade.at("earned") < grade.at("possible"));
  CHECK(grade.at("reason").get<std::string>().find("our sulfosalicylic acid test tube") != std::string::npos);
  const auto time = mark_of(report, "process.ssa.time");
  REQUIRE(time.is_object());
  CHECK(time.at("earned") < time.at("possible"));
  CHECK(time.at("reason").get<std::string>().find(" s after the acid") != std::string::npos);
}

TEST_CASE("A tube in the flame with its mouth to a person stops the sitting whatever was earned") {
  const auto report = play(acid_test + R"({"do": "flame"}
{"do": "move", "vessel": "tube-4", "place": "flame", "towards_person": true}
{"do": "wait", "seconds": 6}
{"do": "move", "vessel": "tube-4", "place": "rack"}
{"do": "flame", "on": false}
)");
  CHECK(report.at("safety_stop") == true);
  CHECK(mark_of(report, "safety.pointed_at_person").at("reason").get<std::string>().find("6 s") !=
        std::string::npos);
}
