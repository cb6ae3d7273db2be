#include "engine/desk/practice.hpp"
#include "engine/learner/record.hpp"

#include <catch2/catch.hpp>

#include <chrono>
#include <thread>

using namespace matula;
namespace fs = std::filesystem;

namespace {

const desk::Ground& ground() {
  static const auto loaded = desk::Ground::load();
  if (!loaded) {
    FAIL(scenario::to_text(loaded.error()));
  }
  return *loaded;
}

struct Folder {
  Folder() : path(fs::temp_directory_path() / "matula_desk_practice_test") { fs::remove_all(path); }
  ~Folder() { fs::remove_all(path); }
  fs::path path;
};

template <class Holds> void wait_until(const Holds& holds) {
  using namespace std::chrono;
  const auto end = steady_clock::now() + seconds(120);
  while (!holds()) {
    REQUIRE(steady_clock::now() < end);
    std::this_thread::sleep_for(milliseconds(20));
  }
}

/// The first thing there is to choose, or a number.
std::vector<std::string> any_reply(const desk::Question& question) {
  switch (question.kind) {
  case desk::Posed::Tube:
    return {question.words.front()};
  case desk::Posed::Float:
    return {"1.018"};
  case desk::Posed::Sum:
    return {"1.018", "1.018", "1.018", "1.018", "1.018"};
  case desk::Posed::Delivery:
    return {question.verdicts.front().first, question.reasons.front().first};
  }
  return {};
}

} // namespace

TEST_CASE("Every skill is drilled from the list, and every first answer stands in the record") {
  const Folder folder;
  auto room = desk::PracticeRoom::load(ground(), folder.path);
  REQUIRE(room);
  std::size_t kept = 0;
  for (const auto& skill : room->skills()) {
    desk::Drill drill(*room, {skill.key}, 7);
    std::string before;
    for (int i = 0; i < 3; ++i) {
      INFO(skill.key << " " << i);
      wait_until([&] { return drill.ready(); });
      CHECK_FALSE(drill.feedback());
      CHECK(drill.beside({}).empty()); // No tube to compare with before the answer.
      const auto& question = drill.question();
      CHECK(question.table.size() == question.words.size());
      CHECK(drill.answer(any_reply(question)).empty());
      CHECK_FALSE(drill.answer(any_reply(question)).empty());
      REQUIRE(drill.feedback());
      CHECK_FALSE(drill.feedback()->words.empty());
      if (question.kind == desk::Posed::Tube) {
        wait_until([&] { return !drill.beside_pending(); });
        const auto row = drill.beside({});
        CHECK(row.size() >= 2);
        CHECK(row.size() <= 3);
      }
      const auto record = learner::load(folder.path / "record.jsonl");
      REQUIRE(record.answers.size() == ++kept);
      CHECK(record.answers.back().skill == skill.key);
      CHECK(record.answers.back().from == learner::From::Drill);
      CHECK(record.answers.back().unknown != before);
      before = record.answers.back().unknown;
      drill.next();
    }
  }
  for (const auto& skill : room->skills()) {
    CHECK(skill.answered == 3);
  }
}

TEST_CASE("A quiz tells nothing before its end, survives being dropped, and then tells all by ledger") {
  const Folder folder;
  fs::path file;
  {
    auto room = desk::PracticeRoom::load(ground(), folder.path);
    REQUIRE(room);
    const auto quizzes = room->quizzes();
    REQUIRE_FALSE(quizzes.empty());
    CHECK(quizzes.front().problem.empty());
    auto run = desk::QuizRun::begin(*room, quizzes.front().file, true);
    REQUIRE(run);
    CHECK(run->left_s() == Approx(60.0 * quizzes.front().minutes));
    for (int i = 0; i < 3; ++i) {
      wait_until([&] { return run->ready(); });
      CHECK(run->question().table.empty());
      CHECK(run->beside({}).empty());
      run->run(20);
      CHECK(run->answer(any_reply(run->question())).empty());
    }
    CHECK(run->answered() == 3);
    CHECK(learner::load(folder.path / "record.jsonl").answers.empty());
  }
  auto room = desk::PracticeRoom::load(ground(), folder.path);
  const auto begun = room->unfinished();
  REQUIRE(begun.size() == 1);
  CHECK(begun.front().answered == 3);
  auto run = desk::QuizRun::resume(*room, begun.front().file);
  REQUIRE(run);
  CHECK(run->answered() == 3);
  CHECK(run->left_s() == Approx(60.0 * begun.front().minutes - 60));
  CHECK(run->finish().empty());
  wait_until([&] { return run->marked(); });
  CHECK(run->report().possible(scoring::Ledger::Interpretation) > 0);
  CHECK(run->report().earned(scoring::Ledger::Interpretation) <
        run->report().possible(scoring::Ledger::Interpretation));
  CHECK(learner::load(folder.path / "record.jsonl").answers.size() == 3); // What was left out is no answer.
  CHECK(room->unfinished().empty());
  CHECK_FALSE(run->feedback(run->count() - 1).right);
}
