// What is kept of a learner's answers from day to day, through power cuts and clumsy editing.
#include "engine/learner/record.hpp"

#include "engine/strict/file.hpp"

#include <catch2/catch.hpp>

#include <fstream>
#include <unistd.h>

using namespace matula;
using learner::Answer;
using learner::From;

namespace {

/// A file name in a folder of its own, taken away at the end.
struct Place {
  Place() : folder(std::filesystem::temp_directory_path() / ("matula_record_" + std::to_string(::getpid()))) {
    std::filesystem::remove_all(folder);
    std::filesystem::create_directories(folder);
  }
  ~Place() { std::filesystem::remove_all(folder); }
  [[nodiscard]] std::filesystem::path file() const { return folder / "record.jsonl"; }

  std::filesystem::path folder;
};

std::string text_of(const std::filesystem::path& file) {
  std::string text;
  REQUIRE(strict::read_text(file, text));
  return text;
}

void write_text(const std::filesystem::path& file, const std::string& text) {
  std::ofstream(file, std::ios::binary) << text;
}

Answer cloud() {
  Answer answer;
  answer.when_s = 1767225600;
  answer.from = From::Drill;
  answer.skill = "turbidity";
  answer.test = "ssa";
  answer.unknown = "ssa 4.25 \"7\"";
  answer.difficulty = -0.1;
  answer.credit = 800;
  answer.written = "1+";
  answer.expected = "trace \xc2\xb5";
  answer.intensity = 1.0 / 3;
  answer.grade = 2;
  return answer;
}

Answer delivery() {
  Answer answer;
  answer.when_s = 1767225700;
  answer.from = From::Quiz;
  answer.skill = "reception";
  answer.unknown = "day 3 pot 4";
  answer.written = "refuse\nno label";
  answer.expected = "refuse";
  answer.fault = "label_not_read";
  return answer;
}

void check_same(const Answer& one, const Answer& other) {
  CHECK(one.when_s == other.when_s);
  CHECK(one.from == other.from);
  CHECK(one.skill == other.skill);
  CHECK(one.test == other.test);
  CHECK(one.unknown == other.unknown);
  CHECK(one.difficulty == other.difficulty);
  CHECK(one.credit == other.credit);
  CHECK(one.written == other.written);
  CHECK(one.expected == other.expected);
  CHECK(one.intensity == other.intensity);
  CHECK(one.grade == other.grade);
  CHECK(one.fault == other.fault);
}

} // namespace

TEST_CASE("Answers come back as they were given, in their order") {
  const Place place;
  CHECK(learner::load(place.file()).answers.empty());
  CHECK(learner::load(place.file()).problems.empty());
  REQUIRE(learner::append(place.file(), {cloud()}).empty());
  REQUIRE(learner::append(place.file(), {delivery(), cloud()}).empty());
  const auto record = learner::load(place.file());
  CHECK(record.problems.empty());
  REQUIRE(record.answers.size() == 3);
  check_same(record.answers[0], cloud());
  check_same(record.answers[1], delivery());
  check_same(record.answers[2], cloud());
  CHECK(text_of(place.file()).rfind("{\"matula_record\":1}\n", 0) == 0);
}

TEST_CASE("A stop at any byte loses at most what was being written") {
  const Place place;
  REQUIRE(learner::append(place.file(), {cloud()}).empty());
  REQUIRE(learner::append(place.file(), {delivery(), cloud()}).empty());
  const std::string whole = text_of(place.file());
  std::vector<std::size_t> answer_ends; // Of the answers without the end of their lines.
  for (std::size_t at = whole.find('\n', whole.find('\n') + 1); at != std::string::npos;
       at = whole.find('\n', at + 1)) {
    answer_ends.push_back(at);
  }
  REQUIRE(answer_ends.size() == 3);
  for (std::size_t kept = 0; kept <= whole.size(); ++kept) {
    CAPTURE(kept);
    write_text(place.file(), whole.substr(0, kept));
    std::size_t survived = 0;
    for (const std::size_t end : answer_ends) {
      survived += end <= kept ? 1 : 0;
    }
    const auto stopped = learner::load(place.file());
    REQUIRE(stopped.problems.empty());
    REQUIRE(stopped.answers.size() == survived);
    // Work goes on, is stopped at its very beginning once more, and goes on again.
    REQUIRE(learner::append(place.file(), {delivery()}).empty());
    const std::string after = text_of(place.file());
    REQUIRE(after.substr(0, kept) == whole.substr(0, kept));
    write_text(place.file(), after + "{\"when_s");
    REQUIRE(learner::append(place.file(), {cloud()}).empty());
    const auto record = learner::load(place.file());
    REQUIRE(record.problems.empty());
    REQUIRE(record.answers.size() == survived + 2);
    check_same(record.answers[survived], delivery());
    check_same(record.answers[survived + 1], cloud());
  }
}

TEST_CASE("A spoilt line is named and stays; the others are read") {
  const Place place;
  REQUIRE(learner::append(place.file(), {cloud(), delivery(), cloud()}).empty());
  std::string text = text_of(place.file());
  const std::size_t quiz = text.find("quiz");
  text.replace(quiz, 4, "quis");
  text.replace(text.rfind("\"credit\":800"), 12, "\"credit\":8000");
  write_text(place.file(), text + "scribble\n");
  const auto record = learner::load(place.file());
  REQUIRE(record.answers.size() == 1);
  REQUIRE(record.problems.size() == 3);
  CHECK(record.problems[0].line == 3);
  CHECK(record.problems[0].file == place.file().string());
  CHECK(record.problems[0].found == "\"from\": \"quis\"");
  CHECK(record.problems[0].expected.find("quiz") != std::string::npos);
  CHECK(record.problems[1].line == 4);
  CHECK(record.problems[1].expected == "a number from 0 to 1000");
  CHECK(record.problems[2].line == 5);
  REQUIRE(learner::append(place.file(), {delivery()}).empty());
  CHECK(text_of(place.file()).rfind(text + "scribble\n", 0) == 0);
  CHECK(learner::load(place.file()).answers.size() == 2);
  CHECK(learner::load(place.file()).problems.size() == 3);
}

TEST_CASE("A record without its first line, or of a later program, is not taken for granted") {
  const Place place;
  REQUIRE(learner::append(place.file(), {cloud()}).empty());
  const std::string text = text_of(place.file());
  write_text(place.file(), text.substr(text.find('\n') + 1));
  const auto headless = learner::load(place.file());
  CHECK(headless.answers.size() == 1);
  REQUIRE(headless.problems.size() == 1);
  CHECK(headless.problems[0].line == 1);

  const std::string later = "{\"matula_record\":2}\n";
  write_text(place.file(), later);
  CHECK(learner::load(place.file()).problems.size() == 1);
  CHECK(learner::append(place.file(), {cloud()}).size() == 1);
  CHECK(text_of(place.file()) == later);
}

TEST_CASE("What could not be read again, or not be written, is refused with the reason") {
  const Place place;
  Answer odd = cloud();
  odd.credit = 1001;
  CHECK(learner::append(place.file(), {delivery(), odd}).size() == 1);
  odd = cloud();
  odd.intensity = std::nan("");
  CHECK(learner::append(place.file(), {odd}).size() == 1);
  CHECK_FALSE(std::filesystem::exists(place.file()));
  const auto nowhere = learner::append(place.folder / "none" / "record.jsonl", {cloud()});
  REQUIRE(nowhere.size() == 1);
  CHECK(nowhere[0].found.find("No such file") != std::string::npos);
  CHECK(learner::load(place.folder).problems.size() == 1); // A folder is no record.
}
