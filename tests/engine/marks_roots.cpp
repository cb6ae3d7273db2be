// Where marks went: every lost mark is charged to one fault, skill is what beats one constant answer, and
// nothing makes up for a missed finding or a danger.
#include "played_support.hpp"

#include "engine/scoring/roots.hpp"
#include "engine/sitting/steps.hpp"

#include <fstream>
#include <numeric>
#include <set>
#include <sstream>

using namespace matula;
using scoring::Mark;

namespace {

Mark graded(int truth, int read) {
  const scoring::OrdinalRule rule;
  Mark mark;
  mark.possible = 20;
  scoring::Graded one;
  one.truth = truth;
  one.read = read;
  for (int y = 0; y < 6; ++y) {
    one.answers.push_back(
        scoring::score_grade(static_cast<reading::Grade>(truth), static_cast<reading::Grade>(y), rule));
  }
  one.per_mille = one.answers[static_cast<std::size_t>(read)];
  one.missed_finding = truth >= 2 && read == 0;
  mark.graded = one;
  return mark;
}

/// A hundred tubes: so many of each grade.
constexpr int tubes[] = {35, 15, 18, 14, 10, 8};

template <typename Answer> std::vector<Mark> read_all(Answer answer) {
  std::vector<Mark> marks;
  for (int truth = 0; truth < 6; ++truth) {
    for (int i = 0; i < tubes[truth]; ++i) {
      marks.push_back(graded(truth, answer(truth)));
    }
  }
  return marks;
}

scoring::Report played(const std::string& name) {
  const auto steps = sitting::read_steps(test::case_folder / "steps" / (name + ".jsonl"));
  REQUIRE(steps.has_value());
  return scoring::score(test::world(), test::load_case(name.substr(0, name.find('.'))), *steps);
}

} // namespace

TEST_CASE("Who always answers the same earns marks and shows no skill") {
  // By hand from the score matrix and the tubes above: always "trace" earns 616 per mille, always "negative"
  // 470.
  const auto trace = standing_of(read_all([](int) { return 1; }), {}, false);
  CHECK(trace.mean == 616);
  CHECK(trace.best_constant == 616);
  CHECK(trace.skill == 0);
  CHECK(standing_of(read_all([](int) { return 0; }), {}, false).mean == 470);
  const auto perfect = standing_of(read_all([](int truth) { return truth; }), {}, false);
  CHECK(perfect.mean == 1000);
  CHECK(perfect.skill == 1000);
  CHECK(perfect.exact == 100);
  CHECK(perfect.passed);
}

TEST_CASE("A missed finding is not made up for, nor is a danger") {
  auto marks = read_all([](int truth) { return truth; });
  marks.push_back(graded(3, 0));
  const auto missed = standing_of(marks, {}, false);
  CHECK(missed.mean > 950);
  CHECK(missed.missed_findings == 1);
  CHECK_FALSE(missed.passed);
  CHECK(standing_of(marks, {600, 1}, false).passed);
  const auto danger = standing_of(read_all([](int truth) { return truth; }), {}, true);
  CHECK_FALSE(danger.passed);
  REQUIRE(danger.not_passed_because.size() == 1);
  CHECK(scoring::say(danger).back().find("hurt") != std::string::npos);
}

TEST_CASE("Where every tube is alike skill cannot be told from luck") {
  const auto alike = scoring::standing_of({graded(2, 2), graded(2, 2)}, {}, false);
  CHECK_FALSE(alike.skill.has_value());
}

TEST_CASE("Every lost mark is charged to exactly one fault") {
  for (const char* name :
       {"frothy_ankles.flawed", "port_wine_plasma.flawed", "maple_syrup.flawed", "pale_stools.flawed"}) {
    CAPTURE(name);
    const auto report = played(name);
    int lost = 0;
    std::multiset<std::string> charged;
    for (const auto& mark : report.marks) {
      lost += mark.possible - mark.earned;
      CHECK(mark.root.empty() == (mark.earned == mark.possible));
    }
    int by_root = 0;
    for (const auto& loss : report.losses) {
      by_root += loss.lost;
      CHECK_FALSE(loss.words.empty());
      charged.insert(loss.items.begin(), loss.items.end());
    }
    CHECK(by_root == lost);
    for (const auto& mark : report.marks) {
      CHECK(charged.count(mark.item) == (mark.earned < mark.possible ? 1U : 0U));
    }
  }
}

TEST_CASE("A test that was not done is one fault, wherever its marks were") {
  const auto log = sitting::parse_steps(R"({"do":"finish"})", "steps");
  const auto report = scoring::score(test::world(), test::load_case("first_case"), *log);
  for (const auto& mark : report.marks) {
    if (mark.item == "ssa.grade" || mark.item == "process.ssa") {
      CHECK(mark.root == "process.ssa");
    }
  }
  CHECK(report.standing.readings == 0);
  // Who reads nothing misses nothing, and does not pass for it.
  CHECK_FALSE(report.standing.passed);
  CHECK(scoring::say(report.standing).back().find("3 asked tests were not done and read") !=
        std::string::npos);
}

TEST_CASE("A wrong conclusion from a spoiled tube is charged to what spoiled it, and reading it truly earns "
          "the reading") {
  // Sulfosalicylic acid never mixed in: hardly a cloud, truly read.
  const auto log = sitting::parse_steps(R"({"do":"protect","gloves":true,"goggles":true}
{"do":"mix","vessel":"specimen","seconds":5}
{"do":"pour","from":"specimen","to":"tube-2","volume_ml":3}
{"do":"dispense","reagent":"ssa_3","to":"tube-2","volume_ml":3,"gently":true}
{"wait":20}
{"do":"record","item":"ssa.grade","value":"negative"}
{"do":"record","item":"decision.meaning","value":"neither"}
{"do":"finish"}
)",
                                        "steps");
  const auto report = scoring::score(test::world(), test::load_case("first_case"), *log);
  for (const auto& mark : report.marks) {
    if (mark.item == "decision.meaning") {
      CHECK(mark.root == "process.ssa.mixed");
    }
  }
  bool found = false;
  for (const auto& finding : report.findings) {
    found = found || finding.test == "ssa";
    CHECK_FALSE(finding.interpreted_right);
  }
  CHECK(found);
}

TEST_CASE("A scenario may mark more strictly than the house") {
  auto scenario = test::load_case("first_case");
  scenario.marking.rules.loss = {0, 1000, 1000, 1000, 1000, 1000};
  scenario.marking.rules.pass_mark = 900;
  const auto book = test::standards().rules.with(scenario.marking.rules);
  const auto& ssa = book.find_test("ssa")->ordinal;
  CHECK(scoring::score_grade(reading::Grade::TwoPlus, reading::Grade::OnePlus, ssa) == 0);
  CHECK(book.pass.mark == 900);
  CHECK(test::standards().rules.find_test("ssa")->ordinal.loss[1] == 200); // The house itself is unchanged.
}

TEST_CASE("The table of a scenario's own marking is read strictly") {
  const auto text = [](const std::string& more) {
    std::ifstream file(test::case_folder / "first_case.toml");
    std::ostringstream all;
    all << file.rdbuf() << "\n[marking]\n" << more;
    return scenario::parse(all.str(), "first_case.toml", test::world().catalogue);
  };
  const auto good = text("pass_mark = 750\nmissed_finding = 700\nloss = [0, 300, 800, 1000, 1000, 1000]\n");
  REQUIRE(good.has_value());
  CHECK(good->marking.rules.pass_mark == 750);
  CHECK(good->marking.rules.loss.at(1) == 300);
  const auto high = text("pass_mark = 1750\n");
  REQUIRE_FALSE(high.has_value());
  CHECK(high.error().front().expected.find("1000") != std::string::npos);
  CHECK_FALSE(text("pas_mark = 750\n").has_value());
  CHECK_FALSE(text("loss = [0, 300]\n").has_value());
}
