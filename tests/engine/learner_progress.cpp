// What a record tells a learner: skills, rules that fade, trends, and what to change.
#include "engine/learner/progress.hpp"

#include "engine/assets/world.hpp"
#include "engine/practice/rules.hpp"

#include <catch2/catch.hpp>

#include <fstream>

using namespace matula;
using namespace matula::learner;

namespace {

constexpr std::int64_t day_s = 86400;
constexpr std::int64_t first_s = 1767225600;

Rules rules() {
  return load_rules(assets::folder()).value();
}

std::vector<scoring::TestRule> tests() {
  return scoring::load_rulebook(assets::folder()).value().tests;
}

Answer graded(double intensity, int grade, int credit) {
  Answer one;
  one.when_s = first_s;
  one.skill = "turbidity";
  one.test = "heat";
  one.intensity = intensity;
  one.grade = grade;
  one.credit = credit;
  return one;
}

Answer rule_met(const std::string& rule, bool right, std::int64_t when_s) {
  Answer one;
  one.when_s = when_s;
  one.skill = "corrections";
  one.unknown = "corrections/" + rule + "/plain/0/1";
  one.credit = right ? 1000 : 400;
  one.fault = right ? "" : "sign_turned";
  return one;
}

} // namespace

TEST_CASE("Skill is what lies above the best constant answer") {
  // Prevalences .35, .15, .18, .14, .10, .08 of tubes in the middle of their grades: by the loss table the
  // word trace for all earns 616 per mille and negative 470. By hand from the table: .35 800 + .15 1000 + .18
  // 800 + .14 300.
  const int counts[] = {35, 15, 18, 14, 10, 8};
  std::vector<Answer> right;
  std::vector<Answer> trace;
  for (int grade = 0; grade < 6; ++grade) {
    for (int i = 0; i < counts[grade]; ++i) {
      right.push_back(graded(grade, grade, 1000));
      trace.push_back(graded(grade, 1, 0));
    }
  }
  const auto perfect = *skills_of(right, tests(), rules())[0].graded;
  CHECK(perfect.readings == 100);
  CHECK(perfect.exact == Approx(1));
  CHECK(perfect.skill == Approx(1).margin(0.01));
  CHECK(perfect.constant == "trace");
  CHECK(perfect.constant_mean == Approx(616).margin(25)); // A tube in mid-grade is soft by a few per mille.
  const auto gamed = *skills_of(trace, tests(), rules())[0].graded;
  CHECK(gamed.mean == Approx(gamed.constant_mean));
  CHECK(gamed.skill == Approx(0).margin(1e-9));
  CHECK(gamed.within_one == Approx(0.68));
  CHECK(gamed.missed == 0);
}

TEST_CASE("Missed findings come first, where they cost most") {
  std::vector<Answer> answers;
  for (int i = 0; i < 6; ++i) {
    answers.push_back(graded(3, 0, 0));
    answers.push_back(graded(3, 3, 1000));
  }
  const auto found = progress_of(answers, tests(), rules(), first_s);
  CHECK(found.skills[0].graded->missed == 6);
  REQUIRE_FALSE(found.tomorrow.empty());
  CHECK(found.tomorrow.front().rfind("6 tubes with a finding", 0) == 0);
  CHECK(found.tomorrow.size() <= 3);
}

TEST_CASE("Rules fade, come due, and are held after enough recalls") {
  std::vector<Answer> answers;
  for (int i = 0; i < 5; ++i) {
    answers.push_back(rule_met("temperature", true, first_s + i * day_s));
  }
  answers.push_back(rule_met("zero+protein", false, first_s + 4 * day_s));
  const auto now = rules_kept(answers, rules(), first_s + 4 * day_s);
  REQUIRE(now.size() == 3);
  CHECK(now[2].recall == Approx(1));
  const auto later = rules_kept(answers, rules(), first_s + 6 * day_s);
  CHECK(later.front().rule != "temperature");    // Most faded first.
  CHECK(later.front().recall == Approx(0.0625)); // Two days at half a day.
  CHECK(later.front().due);
  CHECK_FALSE(later.front().held);
  CHECK(later.back().rule == "temperature");
  CHECK(later.back().half_life_days == Approx(32)); // Five times doubled.
  CHECK_FALSE(later.back().due);
  CHECK(later.back().held);
  CHECK(later.back().due_s == first_s + 4 * day_s + std::llround(32 * 0.15200309344504995 * day_s));
}

TEST_CASE("A fault is named when it comes back") {
  std::vector<Answer> answers{rule_met("zero", false, first_s), rule_met("zero", false, first_s)};
  const auto named = [&] {
    for (const auto& sentence : progress_of(answers, tests(), rules(), first_s).tomorrow) {
      if (sentence.find("sign turned") != std::string::npos) {
        return true;
      }
    }
    return false;
  };
  CHECK_FALSE(named());
  answers.push_back(rule_met("protein", false, first_s));
  CHECK(named());
}

TEST_CASE("A trend is told only when the answers carry it; a skill is held only with enough of them") {
  std::vector<Answer> answers;
  for (int i = 0; i < 60; ++i) {
    answers.push_back(rule_met("zero", i % 2 == 0, first_s + i));
  }
  auto found = skills_of(answers, tests(), rules());
  CHECK(found[0].trend.sentence.rfind("No change", 0) == 0);
  CHECK_FALSE(found[0].mastered);
  for (int i = 0; i < 40; ++i) {
    answers.push_back(rule_met("zero", true, first_s + 100 + i));
  }
  found = skills_of(answers, tests(), rules());
  CHECK(found[0].trend.sentence.rfind("Better", 0) == 0);
  CHECK(found[0].trend.change > found[0].trend.sd);
  std::vector<Answer> few(19, rule_met("zero", true, first_s));
  CHECK_FALSE(skills_of(few, tests(), rules())[0].mastered);
  CHECK(skills_of(few, tests(), rules())[0].trend.sentence.rfind("Too few", 0) == 0);
  few.push_back(few.front());
  CHECK(skills_of(few, tests(), rules())[0].mastered);
}

TEST_CASE("An empty record says so, and odd answers do no harm") {
  CHECK(progress_of({}, tests(), rules(), first_s).tomorrow ==
        std::vector<std::string>{"Nothing has been answered yet."});
  std::vector<Answer> odd{graded(2, 17, 0), graded(2, 2, 1000)};
  odd[1].test = "no such test";
  const auto found = progress_of(odd, tests(), rules(), first_s);
  CHECK(found.lines.empty());
  CHECK_FALSE(found.skills[0].graded);
}

TEST_CASE("The rules' file is read strictly") {
  const auto folder = std::filesystem::temp_directory_path() / "matula_learning_rules";
  std::filesystem::remove_all(folder);
  std::filesystem::create_directories(folder / "learning");
  std::ifstream shipped(assets::folder() / "learning" / "rules.toml");
  std::string text((std::istreambuf_iterator<char>(shipped)), {});
  const std::size_t at = text.find("near = 0.75");
  REQUIRE(at != std::string::npos);
  text.replace(at, 11, "nere = 0.75");
  std::ofstream(folder / "learning" / "rules.toml") << text;
  const auto broken = load_rules(folder);
  REQUIRE_FALSE(broken);
  CHECK(broken.error().size() == 2);
  CHECK(scenario::to_text(broken.error()).find("near") != std::string::npos);
  std::filesystem::remove_all(folder);
}

TEST_CASE("Progress and practice call the same answers right") {
  const auto practised = practice::load_rules(assets::folder());
  REQUIRE(practised);
  CHECK(practised->choice.right_from == rules().right_from);
}

TEST_CASE("What a whole sitting was about is no rule that fades") {
  Answer sum;
  sum.when_s = first_s;
  sum.from = From::Sitting;
  sum.skill = "corrections";
  sum.unknown = "sitting/first_case-1/sg.corrected";
  CHECK(rules_kept(std::vector{sum}, rules(), first_s).empty());
  sum.unknown = "corrections/zero+temperature/plain/0.0000/1";
  CHECK(rules_kept(std::vector{sum}, rules(), first_s).size() == 2);
}
