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

const char* const plain_scenario = MATULA_SOURCE_DIR "/scenarios/first_case.toml";

} // namespace

TEST_CASE("Help is given on standard output for the program and each verb") {
  const auto help = call("--help");
  CHECK(help.code == 0);
  CHECK(help.err.empty());
  for (const char* verb : {"check", "play", "score", "picture", "ladder"}) {
    CAPTURE(verb);
    CHECK(help.out.find(verb) != std::string::npos);
    const auto answer = call(std::string(verb) + " --help");
    CHECK(answer.code == 0);
    CHECK(answer.out.find("Usage") != std::string::npos);
    CHECK(answer.err.empty());
  }
}

TEST_CASE("A wrong call exits 2 and says why on standard error only") {
  for (const char* words :
       {"brew", "check", "play one.toml", "ladder", "ladder heller", "ladder ssa --at minus",
        "picture a.toml b.jsonl", "picture a.toml b.jsonl -o c.png --size big", "--at 3"}) {
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
        "picture " + broken.string() + " none.jsonl -o " + (scratch() / "never.png").string()}) {
    CAPTURE(words);
    const auto answer = call(words);
    CHECK(answer.code == 1);
    CHECK(answer.out.empty());
    CHECK_FALSE(answer.err.empty());
  }
  CHECK_FALSE(fs::exists(scratch() / "never.png"));
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
  const auto answer = call("play " + std::string(plain_scenario) + " " + steps.string() + " --json");
  REQUIRE(answer.code == 0);
  CHECK(answer.err.empty());
  const auto report = nlohmann::json::parse(answer.out);
  CHECK(report.at("handed_in") == true);
  CHECK(report.at("safety_stop") == false);
  CHECK(report.at("ledgers").at("reading").at("earned") == 0);
  CHECK(report.at("ledgers").at("process").at("earned") == 0);
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
  const auto words = "play " + std::string(plain_scenario) + " " + steps.string() + " --json";
  const auto once = call(words);
  REQUIRE(once.code == 0);
  CHECK(once.out == call(words).out);
}

TEST_CASE("A bad line in the steps is reported with its number") {
  const auto steps = write("bad.jsonl", "{\"t\": 1, \"do\": \"finish\"}\n{\"t\": 2, \"do\": \"dance\"}\n");
  const auto answer = call("play " + std::string(plain_scenario) + " " + steps.string());
  CHECK(answer.code == 1);
  CHECK(answer.err.find(":2") != std::string::npos);
}
