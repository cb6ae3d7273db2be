#include "practice_support.hpp"

#include "engine/scoring/explain.hpp"

#include <fmt/format.h>

using namespace matula;
using namespace matula::practice;
using test::store;

namespace {

const Tube& tube_of(const Item& item) {
  return std::get<Tube>(item.thing);
}

/// From end to end of where a test reaches, and on every line within.
std::vector<double> targets(const Practised& test, double step) {
  std::vector<double> all;
  for (const Reach& span : test.reach) {
    for (double at = span.low; at < span.high; at += step) {
      all.push_back(at);
    }
    all.push_back(span.high);
    for (double line = 0.5; line < span.high; line += 1) {
      if (line > span.low) {
        all.push_back(line);
      }
    }
  }
  return all;
}

} // namespace

TEST_CASE("A tube comes out as strong as it was wanted, to a tenth of a grade, on plain and on dark urine") {
  double worst = 0;
  for (const Practised& test : store().rules.tests) {
    for (const Urine& urine : store().rules.urines) {
      std::uint64_t seed = 11;
      const bool usual = &urine == &store().rules.urines.front();
      for (const double target : targets(test, usual ? 0.8 : 2.1)) {
        const Unknown unknown{test.skill, test.key, urine.key, target, ++seed};
        const Item item = make_item(store(), unknown);
        INFO(to_text(unknown) << " came out at " << tube_of(item).read.intensity);
        CHECK(std::abs(tube_of(item).read.intensity - target) <= 0.1);
        worst = std::max(worst, std::abs(tube_of(item).read.intensity - target));
      }
    }
  }
  INFO(fmt::format("worst miss {:.3f} grades", worst));
}

TEST_CASE("The same unknown makes the same tube, another seed another one") {
  const Unknown unknown{Skill::Turbidity, "ssa", "plain", 2, 7};
  const Item once = make_item(store(), unknown);
  const Item again = make_item(store(), *unknown_from_text(to_text(unknown)));
  CHECK(bench::state_hash(tube_of(once).state) == bench::state_hash(tube_of(again).state));
  Unknown other = unknown;
  other.seed = 8;
  CHECK(bench::state_hash(tube_of(make_item(store(), other)).state) !=
        bench::state_hash(tube_of(once).state));
}

TEST_CASE("The middles a tube is compared with lie in their grades") {
  for (const Practised& test : store().rules.tests) {
    const auto words = words_of(store(), test.key);
    CHECK(table_of(store(), test.key).size() == words.size());
    for (std::size_t grade = 0; grade < words.size(); ++grade) {
      const Unknown tube{test.skill, test.key, grade % 2 == 0 ? "plain" : "dark", 1, 41};
      const Item item = make_item(store(), middle_of(store(), tube, grade));
      INFO(test.key << " " << words[grade]);
      CHECK(static_cast<std::size_t>(tube_of(item).read.grade) == grade);
    }
  }
}

TEST_CASE("A tube's answer earns what it earns in a sitting, and a line makes two words right") {
  const auto& rule = store().standards->rules.find_test("ssa")->ordinal;
  const Item middle = make_item(store(), {Skill::Turbidity, "ssa", "plain", 2, 3});
  for (const char* word : {"negative", "trace", "1+", "2+"}) {
    const auto grade = *store().standards->rules.find_test("ssa")->grade(word);
    CHECK(judge(store(), middle, {word}).credit ==
          scoring::score_intensity(tube_of(middle).read.intensity, grade, rule).per_mille);
  }
  CHECK(judge(store(), middle, {"1+"}).right);
  CHECK_FALSE(judge(store(), middle, {"2+"}).right);
  CHECK_FALSE(judge(store(), middle, {""}).right);
  const Item line = make_item(store(), {Skill::Turbidity, "ssa", "plain", 1.5, 3});
  const auto trace = judge(store(), line, {"trace"});
  CHECK(trace.right);
  CHECK(judge(store(), line, {"1+"}).right);
  CHECK(trace.on_a_line);
  CHECK(line.difficulty < middle.difficulty);
}

TEST_CASE("A float stands where it was wanted, and a raised eye or the top of the meniscus is named") {
  for (const auto& [water, span] : store().rules.floats.temperature_c) {
    for (const double target : {1.0052, 1.01843, 1.0347}) {
      const Unknown unknown{Skill::Meniscus, "float", water, target, 5};
      const Item item = make_item(store(), unknown);
      const auto& jar = std::get<FloatJar>(item.thing);
      INFO(to_text(unknown));
      CHECK(jar.shows.reading_at_surface == Approx(target).margin(0.0001)); // A tenth of a division.
      CHECK(jar.liquid_c >= span.low);
      CHECK(jar.liquid_c <= span.high);
      CHECK(std::abs(jar.eye_mm) >= store().rules.floats.eye_mm.low);
      CHECK(judge(store(), item, {scoring::say_gravity(target)}).right);
      CHECK_FALSE(judge(store(), item, {scoring::say_gravity(target + 0.002)}).right);
      const auto top = judge(store(), item, {scoring::say_gravity(jar.shows.reading_at_meniscus_top)});
      CHECK_FALSE(top.right);
      CHECK(top.fault == "top of the meniscus");
    }
  }
}

TEST_CASE("A calculation is marked line by line from the learner's own lines, and the slip is named") {
  for (const std::string& what : all_step_sets()) {
    const Item item = make_item(store(), {Skill::Corrections, what, "plain", 0, 21});
    const auto& sum = std::get<Sum>(item.thing);
    Reply right;
    for (const double line : right_lines(sum)) {
      right.push_back(fmt::format("{:.4f}", line));
    }
    INFO(what);
    CHECK(judge(store(), item, right).credit == 1000);
    CHECK(judge(store(), item, {"", "", "", "", ""}).credit == 0);
  }
  const Item item = make_item(store(), {Skill::Corrections, "zero+temperature+protein", "plain", 0, 4});
  const auto& sum = std::get<Sum>(item.thing);
  const double step = sum.basis.physical_temperature_correction;
  const auto good = right_lines(sum);
  Reply turned{fmt::format("{:.4f}", good[0])};
  for (std::size_t i = 1; i < good.size(); ++i) {
    turned.push_back(fmt::format("{:.4f}", good[i] - 2 * step));
  }
  const auto judged = judge(store(), item, turned);
  CHECK_FALSE(judged.right);
  int lost = 0;
  for (const auto& mark : judged.marks) {
    lost += mark.earned < mark.possible ? 1 : 0; // Every later line follows from the learner's own.
  }
  CHECK(lost == 1);
  CHECK(judged.fault.find("sign was turned round") != std::string::npos);
}

TEST_CASE("A delivery has the fault that was planted, and the rules say what is done with it") {
  for (const auto& [fault, difficulty] : store().rules.difficulty.delivery) {
    for (std::uint64_t seed = 1; seed <= 6; ++seed) {
      const Unknown unknown{Skill::Reception, fault, "plain", 0, seed};
      const Item item = make_item(store(), unknown);
      const auto& handed = std::get<HandedIn>(item.thing);
      INFO(to_text(unknown));
      CHECK((handed.verdict == "accept") == (fault == no_fault));
      CHECK(handed.reasons.size() == 6);
      CHECK(std::count_if(handed.reasons.begin(), handed.reasons.end(),
                          [&](const auto& reason) { return reason.first == fault; }) == 1);
      CHECK(judge(store(), item, {handed.verdict, fault}).credit == 1000);
      const std::string wrong = handed.verdict == "accept" ? "refuse" : "accept";
      CHECK_FALSE(judge(store(), item, {wrong, fault}).right);
      const std::string other =
          handed.reasons.front().first == fault ? handed.reasons[1].first : handed.reasons.front().first;
      CHECK_FALSE(judge(store(), item, {handed.verdict, other}).right);
    }
  }
}

TEST_CASE("To take in what nobody owns stops the station, whatever else is right") {
  const Item item = make_item(store(), {Skill::Reception, "unlabelled", "plain", 0, 2});
  const auto judged = judge(store(), item, {"accept", "unlabelled"});
  CHECK(judged.safety_stop);
  CHECK_FALSE(judged.right);
}

TEST_CASE("What is kept of an answer is enough to make the unknown again") {
  const Unknown unknown{Skill::Copper, "benedict", "dark", 2.2, 31};
  const Item item = make_item(store(), unknown);
  const auto answer = answer_of(store(), item, judge(store(), item, {"2+"}), learner::From::Drill, 5);
  CHECK(answer.skill == "copper");
  CHECK(answer.test == "benedict");
  CHECK(answer.grade == 3);
  CHECK(answer.intensity == Approx(2.2).margin(0.1));
  CHECK(answer.difficulty == item.difficulty);
  REQUIRE(unknown_from_text(answer.unknown));
  CHECK(*unknown_from_text(answer.unknown) == unknown);
  CHECK_FALSE(unknown_from_text("copper/benedict/plain/two/31"));
  CHECK_FALSE(unknown_from_text("copper/benedict/plain/2.0"));
}
