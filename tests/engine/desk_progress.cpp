// The page of a learner's progress: says what a planted eye does, and nothing of an eye that does nothing.
#include "engine/desk/ground.hpp"
#include "engine/desk/progress_book.hpp"
#include "engine/desk/remember.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <unistd.h>

using namespace matula;
namespace fs = std::filesystem;

namespace {

const desk::Ground& ground() {
  static const auto loaded = desk::Ground::load();
  REQUIRE(loaded);
  return *loaded;
}

/// Repeatable numbers in 0..1 (splitmix64; G.L. Steele et al., OOPSLA 2014).
class Draws {
public:
  explicit Draws(std::uint64_t seed) : state_(seed) {}
  double uniform() {
    state_ += 0x9e3779b97f4a7c15ULL;
    std::uint64_t z = state_;
    z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9ULL;
    z = (z ^ (z >> 27)) * 0x94d049bb133111ebULL;
    return static_cast<double>((z ^ (z >> 31)) >> 11) * 0x1p-53;
  }
  double normal() {
    double sum = -6;
    for (int i = 0; i < 12; ++i) {
      sum += uniform();
    }
    return sum;
  }

private:
  std::uint64_t state_;
};

/// Readings of sulfosalicylic tubes of any strength by an eye with these lines and a spread of 0.3 grades.
std::vector<learner::Answer> readings(int count, const std::array<double, 5>& lines, std::uint64_t seed) {
  Draws draws(seed);
  std::vector<learner::Answer> answers;
  for (int i = 0; i < count; ++i) {
    learner::Answer answer;
    answer.when_s = 1767225600 + i * 60;
    answer.skill = "turbidity";
    answer.test = "ssa";
    answer.intensity = -0.2 + 5.2 * draws.uniform();
    answer.unknown = "turbidity/ssa/plain/" + std::to_string(*answer.intensity) + "/" + std::to_string(i);
    const double seen = *answer.intensity + 0.3 * draws.normal();
    answer.grade =
        static_cast<int>(std::count_if(lines.begin(), lines.end(), [&](double line) { return seen > line; }));
    answer.credit = *answer.grade == std::lround(*answer.intensity) ? 1000 : 800;
    answer.written = "w";
    answer.expected = "e";
    answers.push_back(answer);
  }
  return answers;
}

desk::ProgressBook book_of(const std::vector<learner::Answer>& answers) {
  const auto folder = fs::temp_directory_path() / ("progress-" + std::to_string(::getpid()));
  fs::remove_all(folder);
  fs::create_directories(folder);
  REQUIRE(learner::append(desk::record_file(folder), answers).empty());
  auto book = desk::ProgressBook::load(ground(), folder);
  REQUIRE(book);
  return std::move(*book);
}

constexpr std::array<double, 5> true_eye{0.5, 1.5, 2.5, 3.5, 4.5};

} // namespace

TEST_CASE("an eye that calls 1+ what is a trace is told so, with the tubes between the two lines") {
  const auto book = book_of(readings(80, {0.5, 0.85, 2.5, 3.5, 4.5}, 7));
  const auto page = book.page();
  REQUIRE(page.lines.size() == 1);
  const auto& group = page.lines.front();
  REQUIRE(group.lines.size() == 5);
  REQUIRE(group.disputed);
  CHECK(*group.disputed == 1);
  REQUIRE(group.sentences.size() == 1);
  CHECK(group.sentences.front().find("1+") != std::string::npos);
  CHECK(group.lines[1].low < 0.85 + 0.15);
  CHECK(group.lines[1].high > 0.85 - 0.15);
  CHECK_FALSE(page.tomorrow.empty());
  const auto tubes = book.disputed_tubes(group, {});
  REQUIRE(tubes.size() == 3);
  for (const auto& tube : tubes) {
    CHECK(tube.caption == "A practised reader: trace. You: 1+.");
    CHECK(tube.looks.level_mm > 10);
  }
}

TEST_CASE("an eye that reads as the reference does is told nothing") {
  int spoken = 0;
  for (std::uint64_t seed = 1; seed <= 20; ++seed) {
    const auto page = book_of(readings(40, true_eye, seed)).page();
    REQUIRE(page.lines.size() == 1);
    spoken += page.lines.front().disputed ? 1 : 0;
  }
  CHECK(spoken <= 1);
}

TEST_CASE("few readings show no line, and an empty record a page all the same") {
  const auto few = book_of(readings(20, {0.2, 1.0, 1.9, 2.8, 3.8}, 3)).page();
  REQUIRE(few.lines.size() == 1);
  CHECK(few.lines.front().lines.empty());
  CHECK_FALSE(few.lines.front().disputed);
  CHECK(few.lines.front().off);
  const auto none = book_of({}).page();
  CHECK(none.lines.empty());
  REQUIRE(none.skills.size() == 6);
  CHECK(none.skills.front().state.find("Nothing") == 0);
}

TEST_CASE("an eye that takes green copper for yellow and the other way round is told so, with care") {
  auto answers = readings(160, true_eye, 11);
  Draws draws(12);
  for (auto& answer : answers) {
    answer.test = "benedict";
    answer.skill = "copper";
    const bool of_the_two = *answer.grade == 2 || *answer.grade == 3;
    if (of_the_two && draws.uniform() < 0.5) {
      answer.grade = 5 - *answer.grade;
    }
  }
  const auto page = book_of(answers).page();
  REQUIRE(page.colours.size() == 1);
  CHECK(page.colours.front().find("green or yellow") != std::string::npos);
  CHECK(page.colours.front().find("suggests an eye test") != std::string::npos);
  CHECK(book_of(readings(160, true_eye, 11)).page().colours.empty());
}
