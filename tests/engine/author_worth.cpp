// What there is to earn in a case, against sittings that were marked.
#include "author_support.hpp"

#include "engine/author/worth.hpp"
#include "engine/sitting/steps.hpp"

using namespace matula;

namespace {

scenario::Scenario shipped(const std::string& key) {
  auto read = scenario::load(MATULA_SOURCE_DIR "/scenarios/" + key + ".toml", test::shelf().world->catalogue);
  if (!read) {
    FAIL(scenario::to_text(read.error()));
  }
  return std::move(*read);
}

int marks_in(const std::vector<author::LedgerWorth>& worth, const std::string& ledger) {
  for (const auto& one : worth) {
    if (one.ledger == ledger) {
      return one.marks;
    }
  }
  return -1;
}

} // namespace

TEST_CASE("what a case is worth is what a sitting done by the book could earn of it") {
  for (const std::string key : {"frothy_ankles", "day_protein", "sweet_breath"}) {
    INFO(key);
    const auto scenario = shipped(key);
    const auto steps = sitting::read_steps(MATULA_SOURCE_DIR "/scenarios/steps/" + key + ".jsonl");
    REQUIRE(steps);
    const author::Preview begun(test::shelf(), scenario);
    const auto worth = author::worth_of(test::shelf(), scenario, begun);
    const auto report = scoring::score(*test::shelf().world, test::standards(), scenario, *steps);
    for (const auto ledger : scoring::all_ledgers) {
      if (ledger == scoring::Ledger::Safety) {
        CHECK(marks_in(worth, scoring::to_word(ledger)) == -1);
        continue;
      }
      INFO(scoring::to_word(ledger));
      CHECK(marks_in(worth, scoring::to_word(ledger)) == report.possible(ledger));
    }
  }
}

TEST_CASE("a weight changed is worth as much more") {
  auto scenario = shipped("frothy_ankles");
  const author::Preview begun(test::shelf(), scenario);
  const auto was = author::worth_of(test::shelf(), scenario, begun);
  scenario.marking.grade_weight += 7;
  const auto is = author::worth_of(test::shelf(), scenario, begun);
  const auto tests = static_cast<int>(scenario.asked.procedures.size());
  REQUIRE(tests > 0);
  CHECK(marks_in(is, "reading") == marks_in(was, "reading") + 7 * tests);
  CHECK(marks_in(is, "process") == marks_in(was, "process"));
  int parts = 0;
  for (const auto& [label, marks] : is.front().parts) {
    parts += marks;
  }
  CHECK(parts == is.front().marks);
}
