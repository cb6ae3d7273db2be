// The instructor's room: names, forgetting, last days, copies, the check of the store, students in order.

#include "engine/classroom/student_order.hpp"
#include "engine/records/connection.hpp"
#include "engine/records/name_list.hpp"
#include "tests/engine/classroom_support.hpp"
#include "tests/engine/simulated_class.hpp"

#include <set>

using namespace matula;
using classroom::Classroom;
using classroom::StudentColumn;
using test::wait_for;

namespace {

records::Marked tiny(const std::string& pseudonym, const std::string& grade, const std::string& answer,
                     const std::string& keep_until = "") {
  auto in = test::tiny_incoming(pseudonym, test::tiny_log(grade, answer));
  in.keep_until = keep_until;
  return test::marked(in);
}

/// Does `ask` and waits for what it says.
template <class Ask> classroom::Kept kept(Classroom& room, Ask ask) {
  ask();
  REQUIRE(wait_for(room, [&] { return room.kept().has_value() && !room.reading(); }));
  return *room.kept();
}

} // namespace

TEST_CASE("what would be removed with a student is said first, and is what is removed", "[classroom]") {
  const test::Scratch scratch("matula_keeping");
  const auto file = scratch / "class.db";
  test::OpenRoom open(file, {tiny("red-fox", "2+", "yes"), tiny("grey-owl", "negative", "no")});
  Classroom& room = open.room;
  test::spill(scratch / "names.csv", "pseudonym,name\nred-fox,Ada Example\ngrey-owl,Bo Example\n");
  const auto named = kept(room, [&] { room.take_names(scratch / "names.csv"); });
  CHECK(named.lines.front().find("2 names") == 0);
  CHECK(room.page()->names ==
        std::map<std::string, std::string>{{"red-fox", "Ada Example"}, {"grey-owl", "Bo Example"}});
  const std::string before = [&] {
    records::Store store(file.string());
    return test::dump(store);
  }();

  room.look_at_forgetting("grey-owl");
  REQUIRE(wait_for(room, [&] { return room.forgetting().has_value(); }));
  const auto would = room.forgetting()->removed;
  CHECK(would.students == 1);
  CHECK(would.names == 1);
  CHECK(would.sittings == 1);
  CHECK(room.forgetting()->sittings.size() == 1);
  {
    records::Store store(file.string()); // Nothing was changed by looking.
    CHECK(test::dump(store) == before);
    CHECK(store.names().size() == 2);
  }
  const auto done = kept(room, [&] { room.forget("grey-owl"); });
  CHECK(done.lines.front() == "Removed: " + records::in_words(would) + ".");
  CHECK_FALSE(room.forgetting());
  CHECK(room.page()->all_sittings == 1);
  CHECK(room.page()->names.count("grey-owl") == 0);
  CHECK(test::slurp(file).find("grey-owl") == std::string::npos);
  room.look_at_forgetting("grey-owl");
  REQUIRE(wait_for(room, [&] { return !room.trouble().empty(); }));
  CHECK(room.trouble().find("Nobody is called") == 0);
}

TEST_CASE("sittings whose last day is over are listed, counted and removed", "[classroom]") {
  const test::Scratch scratch("matula_past");
  test::OpenRoom open(scratch / "class.db",
                      {tiny("red-fox", "2+", "yes", "2027-09-30"),
                       tiny("grey-owl", "negative", "no", "2028-09-30"), tiny("elk-3", "1+", "yes")});
  Classroom& room = open.room;
  room.look_at_past("2027-09-30");
  REQUIRE(wait_for(room, [&] { return room.past().has_value(); }));
  CHECK(room.past()->sittings.empty());
  room.look_at_past("2027-10-01");
  REQUIRE(wait_for(room, [&] { return room.past() && room.past()->today == "2027-10-01"; }));
  REQUIRE(room.past()->sittings.size() == 1);
  CHECK(room.past()->sittings.front().pseudonym == "red-fox");
  const auto would = room.past()->removed;
  CHECK(room.page()->all_sittings == 3);
  const auto done = kept(room, [&] { room.forget_past("2027-10-01"); });
  CHECK(done.lines.front() == "Removed: " + records::in_words(would) + ".");
  CHECK(would.sittings == 1);
  CHECK(would.students == 1);
  CHECK(room.page()->all_sittings == 2);
  room.look_at_past("soon");
  REQUIRE(wait_for(room, [&] { return !room.trouble().empty(); }));
  CHECK(room.trouble().find("is no day") != std::string::npos);
}

TEST_CASE("a store is copied, never over anything, and looked through", "[classroom]") {
  const test::Scratch scratch("matula_copies");
  const auto file = scratch / "class.db";
  test::OpenRoom open(file, {tiny("red-fox", "2+", "yes")});
  Classroom& room = open.room;
  CHECK(kept(room, [&] { room.back_up(scratch / "copy.db"); }).lines.front() == (scratch / "copy.db"));
  records::Store original(file.string());
  records::Store copy((scratch / "copy.db").string());
  CHECK(test::dump(copy) == test::dump(original));
  room.back_up(scratch / "copy.db");
  REQUIRE(wait_for(room, [&] { return !room.trouble().empty(); }));
  CHECK(room.trouble().find("is there already") != std::string::npos);
  CHECK_FALSE(room.kept());

  CHECK(kept(room, [&] { room.check_store(); }).lines.front() == "Nothing wrong was found.");
  copy.connection().run("DELETE FROM mark WHERE score = 1"); // A careless hand.
  room.open(scratch / "copy.db");
  REQUIRE(wait_for(room, [&] { return room.page().has_value(); }));
  const auto found = kept(room, [&] { room.check_store(); });
  CHECK(found.title == "Something is wrong in the store");
  CHECK(found.lines.front() == copy.find_damage().front());

  room.take_names(scratch / "none.csv");
  REQUIRE(wait_for(room, [&] { return !room.trouble().empty(); }));
  CHECK(room.trouble().find("cannot be read") != std::string::npos);
  test::spill(scratch / "bad.csv", "pseudonym,name\njust a line\n");
  room.take_names(scratch / "bad.csv");
  REQUIRE(wait_for(room, [&] { return room.trouble().find("bad.csv:2:") != std::string::npos; }));
  CHECK(room.page()->names.empty());
}

TEST_CASE("students stand in the order of any column, both ways", "[classroom]") {
  const auto basis = judging::load_basis(assets::folder());
  REQUIRE(basis);
  const test::Scratch scratch("matula_order");
  records::Store store((scratch / "class.db").string());
  store.add_all(test::ClassMaker(*basis).make().sittings, 1800000000);
  store.set_names({{"student-007", "Ada Example"}, {"student-003", "Zoe Example"}});
  const auto page = classroom::read_page(store, "class.db", {}, *basis);
  const auto& students = page.view.students;
  REQUIRE(students.size() == test::SimulatedClass::students);
  using Figure = double (*)(const judging::StudentView&);
  const std::vector<std::pair<StudentColumn, Figure>> figures{
      {StudentColumn::Sittings, [](const judging::StudentView& s) { return 1.0 * s.sum.sittings; }},
      {StudentColumn::Passed,
       [](const judging::StudentView& s) { return 1.0 * s.sum.passed / s.sum.sittings; }},
      {StudentColumn::Mean, [](const judging::StudentView& s) { return 1.0 * s.mean; }},
      {StudentColumn::Exact,
       [](const judging::StudentView& s) { return 1.0 * s.sum.exact / s.sum.readings; }},
      {StudentColumn::Missed, [](const judging::StudentView& s) { return 1.0 * s.sum.missed; }},
      {StudentColumn::FalseAlarms, [](const judging::StudentView& s) { return 1.0 * s.sum.false_alarms; }},
      {StudentColumn::Stops, [](const judging::StudentView& s) { return 1.0 * s.sum.stops; }}};
  for (const auto& [column, figure] : figures) {
    for (const bool down : {false, true}) {
      const auto order = classroom::students_in_order(page, column, down, true);
      CAPTURE(static_cast<int>(column), down);
      REQUIRE(std::set<std::size_t>(order.begin(), order.end()).size() == students.size());
      for (std::size_t i = 1; i < order.size(); ++i) {
        const double before = figure(students[order[i - 1]]);
        const double here = figure(students[order[i]]);
        CHECK((down ? before >= here : before <= here));
        CHECK((before != here || students[order[i - 1]].sum.pseudonym < students[order[i]].sum.pseudonym));
      }
    }
  }
  const auto first = [&](bool down, bool by_name) {
    return students[classroom::students_in_order(page, StudentColumn::Name, down, by_name).front()]
        .sum.pseudonym;
  };
  CHECK(first(false, true) == "student-007"); // Ada, before all who are called student-...
  CHECK(first(false, false) == "student-000");
  CHECK(first(true, false) == "student-199");
}
