// The instructor's room: marking anew on trial and for good, other rules, versions of the marks.

#include "tests/engine/classroom_support.hpp"

using namespace matula;
using classroom::Classroom;
using test::wait_for;

namespace {

records::Marked tiny(const std::string& pseudonym, const std::string& grade, const std::string& answer) {
  return test::marked(test::tiny_incoming(pseudonym, test::tiny_log(grade, answer)));
}

const std::string kinder = test::tiny_scenario + "\n[marking]\nmissed_findings = 1\npass_mark = 0\n";

classroom::RescoreEnd marked_anew(Classroom& room, const classroom::RescoreOrder& order) {
  room.mark_anew(order);
  REQUIRE(wait_for(room, [&] { return room.rescore_end().has_value() && !room.busy(); }));
  return *room.rescore_end();
}

std::vector<records::Version> versions(Classroom& room) {
  room.want_versions();
  REQUIRE(wait_for(room, [&] { return room.versions().has_value(); }));
  return *room.versions();
}

} // namespace

TEST_CASE("marking anew on trial says what marking anew then does, and stores nothing", "[classroom]") {
  const test::Scratch scratch("matula_anew");
  const auto file = (scratch / "class.db").string();
  test::OpenRoom open(file, {tiny("red-fox", "2+", "yes"), tiny("grey-owl", "negative", "no")});
  Classroom& room = open.room;
  test::spill(scratch / "tiny.toml", kinder);
  records::Store other(file);
  const std::string before = test::dump(other);
  classroom::RescoreOrder order;
  order.scenario = scratch / "tiny.toml";
  order.now_s = 1800000100;
  const auto trial = marked_anew(room, order);
  CHECK(test::dump(other) == before);
  CHECK(trial.words().find("nothing was stored") != std::string::npos);
  CHECK(versions(room).size() == 1);

  order.on_trial = false;
  const auto done = marked_anew(room, order);
  CHECK(trial.sum.sittings == done.sum.sittings);
  CHECK(trial.sum.passed_before == done.sum.passed_before);
  CHECK(trial.sum.passed_now == done.sum.passed_now);
  CHECK(done.sum.passed_before == 1);
  CHECK(done.sum.passed_now == 2);
  REQUIRE(trial.sum.changed.size() == done.sum.changed.size());
  REQUIRE(done.sum.changed.size() == 1);
  CHECK(trial.sum.changed[0].now.standing.passed);
  CHECK(trial.sum.changed[0].now.number == done.sum.changed[0].now.number);
  CHECK(room.page()->view.standard.passed == 2);

  // The same as the records' own marking anew of a store of its own.
  records::Store alone((scratch / "alone.db").string());
  alone.add_all({tiny("red-fox", "2+", "yes"), tiny("grey-owl", "negative", "no")}, 1800000000);
  records::RescoreWishes wishes{{"tiny", "", ""}, kinder, 2, 1800000100};
  const auto sum = records::rescore(alone, test::marker(), wishes, {});
  CHECK(sum.passed_now == done.sum.passed_now);
  CHECK(test::dump(alone) == test::dump(other));

  // Both are kept, and either can count.
  auto all = versions(room);
  REQUIRE(all.size() == 2);
  CHECK(all[0].scenario_name.empty());
  CHECK(all[0].passed == 1);
  CHECK(all[0].counting == 0);
  CHECK_FALSE(all[1].scenario_name.empty());
  CHECK(all[1].passed == 2);
  CHECK(all[1].counting == 2);
  room.let_count(all[0]);
  REQUIRE(wait_for(room, [&] { return room.page()->view.standard.passed == 1; }));
  all = versions(room);
  CHECK(all[0].counting == 2);
  CHECK(all[1].counting == 0);
  CHECK(other.sittings({}, true).size() == 4);
  CHECK(other.find_damage().empty());
}

TEST_CASE("sittings are marked anew by the rules of another folder", "[classroom]") {
  const test::Scratch scratch("matula_other_rules");
  test::OpenRoom open(scratch / "class.db", {tiny("red-fox", "1+", "yes")});
  Classroom& room = open.room;
  test::fs::copy(assets::folder(), scratch / "assets", test::fs::copy_options::recursive);
  const auto rules = scratch / "assets" / "scoring" / "rules.toml";
  test::spill(rules, test::slurp(rules) + "\n# Another edition.\n");
  classroom::RescoreOrder order;
  order.rules = scratch / "assets";
  order.on_trial = false;
  const auto done = marked_anew(room, order);
  CHECK(done.words().find("1 sittings marked anew") == 0);
  CHECK(done.sum.as_before == 1); // A comment changes no mark,
  const auto all = versions(room);
  REQUIRE(all.size() == 2); // but the rules are told apart.
  CHECK(all[0].rubric.hash != all[1].rubric.hash);
  CHECK(all[0].rubric.world == all[1].rubric.world);
  CHECK(all[1].counting == 1);
  test::spill(rules, "nonsense");
  CHECK(marked_anew(room, order).words().find("rules.toml") != std::string::npos);
}

TEST_CASE("marking anew can be stopped, and says what it cannot do", "[classroom]") {
  const test::Scratch scratch("matula_anew_stop");
  std::vector<records::Marked> many;
  for (int i = 0; i < 60; ++i) {
    many.push_back(test::marked(
        test::tiny_incoming("student-" + std::to_string(i), test::tiny_log("2+", "yes", 500 + i))));
  }
  test::OpenRoom open(scratch / "class.db", many);
  Classroom& room = open.room;
  test::spill(scratch / "tiny.toml", kinder);
  classroom::RescoreOrder order;
  order.scenario = scratch / "tiny.toml";
  order.on_trial = false;
  room.mark_anew(order);
  REQUIRE(wait_for(room, [&] { return room.work_state().done >= 5; }));
  room.stop_work();
  REQUIRE(wait_for(room, [&] { return room.rescore_end().has_value() && !room.busy(); }));
  CHECK(room.rescore_end()->stopped);
  CHECK(room.rescore_end()->words().find("Stopped after") == 0);
  const int reached = room.rescore_end()->sum.sittings;
  CHECK(reached < 60);
  const auto all = versions(room);
  REQUIRE(all.size() == 2);
  CHECK(all[1].counting == reached);
  CHECK(all[0].counting == 60 - reached);

  test::spill(scratch / "other.toml", test::tiny_scenario);
  order.scenario = scratch / "other.toml";
  CHECK(marked_anew(room, order).words() == "There is no sitting of the case \"other\" here.");
  order.scenario = scratch / "none.toml";
  CHECK(marked_anew(room, order).words().find("cannot be read") != std::string::npos);
  auto stronger = test::tiny_scenario;
  stronger.replace(stronger.find("130 mg/dL"), 3, "230");
  test::spill(scratch / "tiny.toml", stronger);
  order.scenario = scratch / "tiny.toml";
  const auto refused = marked_anew(room, order);
  CHECK(refused.sum.refused.size() == 60);
  CHECK(refused.sum.refused.front().why.find("not the same bench") != std::string::npos);
}
