// The store in a file of its own.
#include "records_cases.hpp"
#include "records_support.hpp"

#include "engine/scoring/report_json.hpp"

#include <nlohmann/json.hpp>

using namespace matula;
using namespace matula::records;

namespace {

/// Runs a case on a new file.
void on_a_file(void (*run)(const std::string&)) {
  const test::Scratch scratch("matula_store");
  run((scratch / "class.db").string());
}

} // namespace

TEST_CASE("A sitting is kept with its marks, readings and the very log") {
  on_a_file(test::keeps_a_sitting);
}
TEST_CASE("Importing again changes nothing, and a clock set back is named") {
  on_a_file(test::knows_what_it_has);
}
TEST_CASE("A sitting that goes on counts in place of its first part") {
  on_a_file(test::puts_the_longer_in_place);
}
TEST_CASE("The same log from two students is named") {
  on_a_file(test::names_the_same_log);
}
TEST_CASE("Marking anew keeps both scores and lists the difference") {
  on_a_file(test::keeps_both_scores);
}

TEST_CASE("What is to be reviewed is found, by label and student, in words") {
  on_a_file(test::finds_what_is_to_be_reviewed);
}

TEST_CASE("A student is forgotten with everything") {
  on_a_file(test::forgets_a_student);
}
TEST_CASE("Sittings go at the end of their time") {
  on_a_file(test::forgets_at_the_last_day);
}
TEST_CASE("A store of the first schema is brought up to date") {
  on_a_file(test::goes_on_from_the_first_schema);
}
TEST_CASE("A store of a newer program is refused in words") {
  on_a_file(test::refuses_a_newer_schema);
}

TEST_CASE("Of a forgotten student nothing is left in the file") {
  const test::Scratch scratch("matula_forget");
  const auto file = scratch / "class.db";
  {
    Store store(file.string());
    std::vector<Incoming> sittings;
    for (const char* who : {"ada", "grey-marten-41", "bo"}) {
      for (int i = 0; i < 5; ++i) {
        sittings.push_back(
            test::tiny_incoming(who, test::tiny_log(i % 2 == 0 ? "1+" : "2+", "yes", 590 + i)));
        sittings.back().checks = std::string(R"({"closing_code": "ok", "of": ")") + who + "\"}";
      }
    }
    import_all(store, test::marker(), sittings, {"", "", 2, 1764244800}, {});
    store.set_names({{"grey-marten-41", "Solveig Marterud"}});
  }
  CHECK(test::slurp(file).find("grey-marten-41") != std::string::npos);
  {
    Store store(file.string());
    CHECK(store.forget("grey-marten-41").sittings == 5);
    for (const auto& entry :
         test::fs::directory_iterator(scratch.path())) { // Beside the file too, while it is open.
      const std::string all = test::slurp(entry.path());
      CHECK(all.find("grey-marten") == std::string::npos);
      CHECK(all.find("Marterud") == std::string::npos);
    }
  }
  const std::string all = test::slurp(file);
  CHECK(all.find("grey-marten") == std::string::npos);
  CHECK(all.find("ada") != std::string::npos);
  CHECK(Store(file.string()).sittings().size() == 10);
}

TEST_CASE("A backup is a whole store, and never written over anything") {
  const test::Scratch scratch("matula_backup");
  Store store((scratch / "class.db").string());
  store.add(test::marked(test::tiny_incoming("ada", test::tiny_log("1+", "yes"))), 1);
  const auto copy = (scratch / "copy.db").string();
  store.back_up(copy);
  CHECK_THROWS_WITH(store.back_up(copy), Catch::Contains("is there already"));
  store.add(test::marked(test::tiny_incoming("bo", test::tiny_log("1+", "yes"))), 1);
  Store other(copy);
  CHECK(other.sittings().size() == 1);
  CHECK(other.original(1).log_text == store.original(1).log_text);
}

TEST_CASE("What cannot be marked is refused in words and changes nothing") {
  const test::Scratch scratch("matula_refused");
  Store store((scratch / "class.db").string());
  auto other_version = test::tiny_incoming("ada", test::tiny_log("1+", "yes"));
  other_version.scenario_text += "\n# changed\n";
  auto broken = test::tiny_incoming("bo", "{\"matula_sitting\": 1}\nnonsense\n");
  const auto full_name = test::tiny_incoming("Bo Example", test::tiny_log("1+", "yes"));
  auto huge = test::tiny_incoming("cy", std::string(20U << 20U, 'x'));
  const auto sum =
      import_all(store, test::marker(), {other_version, broken, full_name, huge}, {"", "", 2, 1}, {});
  REQUIRE(sum.refused.size() == 4);
  CHECK(sum.refused[0].why.find("another version of the scenario") != std::string::npos);
  CHECK(sum.refused[1].why.find("not a JSON object") != std::string::npos);
  CHECK(sum.refused[2].why.find("no pseudonym") != std::string::npos);
  CHECK(sum.refused[3].why.find("larger than any sitting") != std::string::npos);
  CHECK(store.sittings().empty());
}

TEST_CASE("Variants of a case that differ in their seed share the work, and are marked as each alone") {
  for (const char* const seed : {"seed = 7", "seed = 8", "seed = 900"}) {
    std::string text = test::tiny_scenario;
    text.replace(text.find("seed = 7"), 8, seed);
    const auto scenario = scenario::parse(text, "tiny.toml", test::world().catalogue);
    REQUIRE(scenario);
    auto in = test::tiny_incoming("ada", test::tiny_log("1+", "no", 200));
    const auto steps = sitting::parse_log(in.log_text, "log");
    REQUIRE(steps);
    in.log_text = sitting::to_line(sitting::header_for(*scenario)) + '\n';
    for (const auto& event : steps->events) {
      in.log_text += sitting::to_line(event) + '\n';
    }
    in.scenario_text = text;
    const auto alone = scoring::score(test::world(), test::standards(), *scenario, steps->events);
    CHECK(scoring::to_json(alone).dump() == scoring::to_json(test::marked(in).report).dump());
  }
  // Another specimen is no variant of it.
  std::string other = test::tiny_scenario;
  other.replace(other.find("130 mg/dL"), 9, "400 mg/dL");
  const auto scenario = scenario::parse(other, "tiny.toml", test::world().catalogue);
  REQUIRE(scenario);
  scoring::BookWork work;
  const auto first = scoring::prepare(test::world(), test::standards(), *scenario, &work);
  CHECK_FALSE(work.drew_chance);
  CHECK(work.tubes.at("ssa").state.vessels.size() == 1);
  auto in = test::tiny_incoming("bo", test::log_of("tiny", other, "{\"do\": \"finish\"}\n"));
  in.scenario_text = other;
  REQUIRE(first.books.at("ssa"));
  const auto tubes = test::marked(in).report.tubes;
  REQUIRE(tubes.size() == 1);
  CHECK(tubes[0].reference_word ==
        test::standards().rules.find_test("ssa")->word(first.books.at("ssa")->grade));
  CHECK(tubes[0].reference_word !=
        test::marked(test::tiny_incoming("cy", test::tiny_log("1+", "no"))).report.tubes[0].reference_word);
}

TEST_CASE(
    "Marks that share a bench and the tests by the book are byte for byte those of each sitting alone") {
  for (const char* const grade : {"negative", "1+", "4+"}) {
    const auto sat = test::marked(test::tiny_incoming("ada", test::tiny_log(grade, "no", 200)));
    const auto scenario = scenario::parse(test::tiny_scenario, "tiny.toml", test::world().catalogue);
    const auto log = sitting::parse_log(sat.incoming.log_text, "log");
    REQUIRE((scenario && log));
    const auto alone = scoring::score(test::world(), test::standards(), *scenario, log->events);
    CHECK(scoring::to_json(alone).dump() == scoring::to_json(sat.report).dump());
  }
}
