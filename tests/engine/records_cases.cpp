#include "records_cases.hpp"

#include "records_support.hpp"

#include "engine/records/connection.hpp"
#include "engine/records/rescore.hpp"
#include "engine/records/review.hpp"
#include "engine/records/schema.hpp"
#include "engine/records/views.hpp"

namespace matula::test {

using namespace matula::records;

namespace {

constexpr std::int64_t noon_s = 1764244800;

int count(Store& store, const std::string& table) {
  return static_cast<int>(store.connection().number("SELECT count(*) FROM " + table).value_or(-1));
}

} // namespace

void keeps_a_sitting(const std::string& address) {
  const auto sat = marked(tiny_incoming("red-fox", tiny_log("1+", "yes")));
  {
    Store store(address);
    CHECK(store.sittings().empty());
    const Stored stored = store.add(sat, noon_s);
    CHECK(stored.how == Stored::How::New);
    CHECK(stored.number == 1);
  }
  Store again(address);
  const auto rows = again.sittings();
  REQUIRE(rows.size() == 1);
  const SittingRow& row = rows[0];
  CHECK(row.pseudonym == "red-fox");
  CHECK(row.title == "Albumin for the acid test");
  CHECK(row.handed_in);
  CHECK(row.received_s == noon_s);
  CHECK(row.rubric.hash == marker().rubric().hash);
  CHECK(row.rubric.program == MATULA_VERSION);
  CHECK(row.standing.mean == sat.report.standing.mean);
  CHECK(row.standing.skill == sat.report.standing.skill);
  CHECK(row.standing.passed == sat.report.standing.passed);
  const auto readings = again.readings(row);
  REQUIRE(readings.size() == 1);
  CHECK(readings[0].item == "ssa.grade");
  CHECK(readings[0].read == 2);
  CHECK(readings[0].truth == sat.report.marks[0].graded->truth);
  CHECK(readings[0].intensity == Approx(sat.report.marks[0].graded->intensity).margin(0.0005));
  CHECK(readings[0].interpreted_right == true);
  std::size_t n = 0;
  const auto marks = again.marks(row);
  for (const auto& mark : sat.report.marks) {
    if (mark.possible > 0) {
      REQUIRE(n < marks.size());
      CHECK(marks[n] == MarkRow{mark.ledger, mark.item, mark.label, mark.earned, mark.possible, mark.root,
                                mark.entered, mark.expected});
      ++n;
    }
  }
  CHECK(marks.size() == n);
  const Incoming back = again.original(1);
  CHECK(back.log_text == sat.incoming.log_text);
  CHECK(back.scenario_text == tiny_scenario);
}

void knows_what_it_has(const std::string& address) {
  Store store(address);
  const std::vector<Incoming> class_of_two{tiny_incoming("ada", tiny_log("2+", "yes")),
                                           tiny_incoming("bo", tiny_log("negative", "no"))};
  const ImportSum first = import_all(store, marker(), class_of_two, {"spring", "", 2, noon_s}, {});
  CHECK(first.fresh == 2);
  const std::string before = dump(store);
  const ImportSum second = import_all(store, marker(), class_of_two, {"spring", "", 2, noon_s}, {});
  CHECK(second.fresh == 0);
  CHECK(second.known == 2);
  CHECK(dump(store) == before);
  CHECK(store.sittings({"", "spring", ""}).size() == 2);
  CHECK(store.sittings({"", "autumn", ""}).empty());
  CHECK(store.sittings({"", "", "bo"}).size() == 1);
  // A clock that was set back: the order is the numbers', and it is said.
  const ImportSum third = import_all(store, marker(), {tiny_incoming("cy", tiny_log("3+", "yes"))},
                                     {"", "", 1, noon_s - 86400}, {});
  REQUIRE(third.warnings.size() == 1);
  CHECK(third.warnings[0].find("clock") != std::string::npos);
  CHECK(store.sittings().back().pseudonym == "cy");
}

void puts_the_longer_in_place(const std::string& address) {
  Store store(address);
  const std::string half = tiny_log("2+", "", 595, false);
  const std::string whole = tiny_log("2+", "yes");
  CHECK(store.add(marked(tiny_incoming("ada", half)), noon_s).how == Stored::How::New);
  const Stored longer = store.add(marked(tiny_incoming("ada", whole)), noon_s);
  CHECK(longer.how == Stored::How::Goes_on);
  CHECK(store.sittings().size() == 1);         // The first counts no more,
  CHECK(store.sittings({}, true).size() == 2); // and is kept.
  CHECK(store.sittings({}, true)[0].continued_in == longer.number);
  CHECK(pair_counts(store, {}).size() == 1);
  const std::string shorter = whole.substr(0, whole.rfind("{\"t\"")); // Without the last line.
  CHECK(store.add(marked(tiny_incoming("ada", shorter)), noon_s).how == Stored::How::Earlier);
  CHECK(store.sittings({}, true).size() == 2);
}

void names_the_same_log(const std::string& address) {
  Store store(address);
  const std::string log = tiny_log("2+", "yes", 601);
  const ImportSum sum = import_all(store, marker(), {tiny_incoming("ada", log), tiny_incoming("bo", log)},
                                   {"", "", 2, noon_s}, {});
  CHECK(sum.fresh == 2);
  REQUIRE(sum.warnings.size() == 1);
  CHECK(sum.warnings[0].find("bo handed in the very log of ada") == 0);
}

void finds_what_is_to_be_reviewed(const std::string& address) {
  const std::string good =
      R"({"to_be_reviewed":false,"checks":[{"check":"chain","state":"good","words":"it fits"}]})";
  const std::string bad =
      R"({"to_be_reviewed":true,"checks":[{"check":"receipt","state":"good","words":"signed"},)"
      R"({"check":"chain","state":"to be reviewed","words":"line 3 differs"},)"
      R"({"check":"closing code","state":"to be reviewed","words":"another one"}]})";
  Store store(address);
  for (const auto& [who, checks, label] : std::vector<std::array<std::string, 3>>{{"red-fox", good, "spring"},
                                                                                  {"grey-owl", bad, "spring"},
                                                                                  {"wren", bad, "autumn"},
                                                                                  {"stoat", "", ""}}) {
    auto in = tiny_incoming(who, tiny_log("1+", "yes"));
    in.checks = checks;
    in.label = label;
    store.add(marked(in), noon_s);
  }
  const auto all = to_review(store, {});
  REQUIRE(all.size() == 2);
  CHECK(all[0].pseudonym == "grey-owl");
  CHECK(all[0].number == 2);
  CHECK(all[0].exercise == "tiny");
  CHECK(all[0].why == std::vector<std::string>{"chain: line 3 differs", "closing code: another one"});
  Scope autumn;
  autumn.label = "autumn";
  REQUIRE(to_review(store, autumn).size() == 1);
  CHECK(to_review(store, autumn).front().pseudonym == "wren");
  Scope fox;
  fox.pseudonym = "red-fox";
  CHECK(to_review(store, fox).empty());
  CHECK(what_to_review(bad) == "chain, closing code");
  CHECK(what_to_review(good).empty());
  CHECK(checks_of(good).size() == 1);
  for (const std::string odd : {"", "{", "[1]", R"({"checks":3})", R"({"checks":[3,{"check":4}]})"}) {
    CHECK(why_review(odd).empty()); // What is no such list tells nothing.
  }
  // The very log again, in a result that does not fit it; afterwards in one that does.
  auto again = tiny_incoming("red-fox", tiny_log("1+", "yes"));
  for (const std::string& found : {bad, good}) {
    again.checks = found;
    CHECK(import_all(store, marker(), {again}, {"spring", "", 1, noon_s}, {}).known == 1);
    REQUIRE(to_review(store, fox).size() == 1);
    CHECK(to_review(store, fox).front().why == all[0].why);
  }
}

void keeps_both_scores(const std::string& address) {
  Store store(address);
  import_all(store, marker(),
             {tiny_incoming("ada", tiny_log("1+", "yes")), tiny_incoming("bo", tiny_log("2+", "no"))},
             {"", "", 2, noon_s}, {});
  const auto before = store.sittings();
  const std::string other =
      tiny_scenario +
      "\n[marking]\nloss = [0, 100, 500, 1000, 1000, 1000]\npass_mark = 950\n\n[weights]\neach_grade = 40\n";
  RescoreWishes wishes;
  wishes.other_scenario = other;
  wishes.now_s = noon_s;
  const RescoreSum sum = rescore(store, marker(), wishes, {});
  INFO((sum.refused.empty() ? "" : sum.refused[0].why));
  REQUIRE(sum.sittings == 2);
  REQUIRE(sum.changed.size() == 2);
  const auto& of_ada = sum.changed[0];
  const auto reading = std::find_if(of_ada.changes.begin(), of_ada.changes.end(),
                                    [](const MarkChange& c) { return c.item == "ssa.grade"; });
  REQUIRE(reading != of_ada.changes.end());
  CHECK(reading->possible_before == 20);
  CHECK(reading->possible_now == 40);
  CHECK(store.sittings().size() == 2);
  CHECK(store.sittings({}, true).size() == 4);
  CHECK(store.sittings()[1].standing.mean != before[1].standing.mean);
  CHECK(store.sittings()[0].scenario_name != before[0].scenario_name);
  CHECK(store.sittings()[0].rubric.hash == before[0].rubric.hash);
  // Each reading counts once, whatever the number of scores.
  int readings = 0;
  for (const auto& pair : pair_counts(store, {})) {
    readings += pair.times;
  }
  CHECK(readings == 2);
  // Back to its own scenario: the first score counts again, and no third is made.
  wishes.other_scenario.clear();
  CHECK(rescore(store, marker(), wishes, {}).changed.size() == 2);
  CHECK(store.sittings({}, true).size() == 4);
  CHECK(store.sittings()[1].standing.mean == before[1].standing.mean);
  // Another bench is no other rubric.
  wishes.other_scenario = tiny_scenario;
  wishes.other_scenario.replace(wishes.other_scenario.find("130 mg/dL"), 9, "10 mg/dL");
  const RescoreSum refused = rescore(store, marker(), wishes, {});
  REQUIRE(refused.refused.size() == 2);
  CHECK(refused.refused[0].why.find("'specimen'") != std::string::npos);
  CHECK(store.sittings({}, true).size() == 4);
}

void forgets_a_student(const std::string& address) {
  Store store(address);
  import_all(store, marker(),
             {tiny_incoming("ada", tiny_log("1+", "yes")),
              tiny_incoming("blue-heron-77", tiny_log("quite a lot", "no"))},
             {"", "", 2, noon_s}, {});
  store.set_names({{"ada", "Ada Example"}, {"blue-heron-77", "Berit Quokkasdottir"}});
  CHECK(store.names().at("blue-heron-77") == "Berit Quokkasdottir");
  const auto ada = store.marks(store.sittings({"", "", "ada"})[0]);
  const Removed removed = store.forget("blue-heron-77");
  CHECK(removed.students == 1);
  CHECK(removed.names == 1);
  CHECK(removed.sittings == 1);
  CHECK(removed.scores == 1);
  CHECK(removed.readings == 1);
  CHECK(removed.marks == static_cast<int>(ada.size()));
  CHECK(removed.words >= 1); // "quite a lot"
  CHECK(count(store, "word WHERE text = 'quite a lot'") == 0);
  CHECK(count(store, "student") == 1);
  CHECK(store.marks(store.sittings()[0]) == ada);
  CHECK_THROWS_WITH(store.forget("blue-heron-77"), Catch::Contains("Nobody is called"));
}

void forgets_at_the_last_day(const std::string& address) {
  Store store(address);
  import_all(store, marker(), {tiny_incoming("ada", tiny_log("1+", "yes"))}, {"", "2027-03-31", 1, noon_s},
             {});
  import_all(store, marker(), {tiny_incoming("bo", tiny_log("1+", "yes", 600))},
             {"", "2027-09-30", 1, noon_s}, {});
  import_all(store, marker(), {tiny_incoming("cy", tiny_log("1+", "yes", 610))}, {"", "", 1, noon_s}, {});
  CHECK(store.forget_until("2027-03-31").sittings == 0); // The last day itself is still his.
  const Removed removed = store.forget_until("2027-04-01");
  CHECK(removed.sittings == 1);
  CHECK(removed.students == 1);
  CHECK(store.sittings().size() == 2);
  CHECK_THROWS_WITH(store.forget_until("soon"), Catch::Contains("no day"));
}

void goes_on_from_the_first_schema(const std::string& address) {
  {
    Connection old(address);
    migrate(old, 1);
    CHECK(old.text("SELECT value FROM meta WHERE name = 'schema'") == "1");
  }
  Store store(address);
  CHECK(store.connection().text("SELECT value FROM meta WHERE name = 'schema'") ==
        std::to_string(newest_schema()));
  CHECK(store.add(marked(tiny_incoming("ada", tiny_log("1+", "yes"))), noon_s).number == 1);
}

void refuses_a_newer_schema(const std::string& address) {
  { const Store made(address); }
  {
    Connection newer(address);
    newer.run("UPDATE meta SET value = '999' WHERE name = 'schema'");
  }
  CHECK_THROWS_WITH(Store(address), Catch::Contains("newer version of this program"));
}

} // namespace matula::test
