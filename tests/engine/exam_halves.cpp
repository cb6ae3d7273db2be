// A scenario in two halves: together they are the scenario, and the bench half alone answers nothing.
#include "engine/examination/halves.hpp"
#include "engine/examination/plan.hpp"
#include "engine/scenario/brief.hpp"
#include "engine/scenario/halves.hpp"
#include "engine/strict/file.hpp"
#include "exam_support.hpp"

#include <fstream>

using namespace matula;
using namespace matula::tests;
using Catch::Matchers::Contains;
namespace fs = std::filesystem;

namespace {

const fs::path root = MATULA_SOURCE_DIR;

std::vector<fs::path> shipped() {
  std::vector<fs::path> files;
  for (const auto& entry : fs::directory_iterator(root / "scenarios")) {
    if (entry.path().extension() == ".toml") {
      files.push_back(entry.path());
    }
  }
  return files;
}

std::string text_of(const fs::path& file) {
  std::string text;
  REQUIRE(strict::read_text(file, text));
  return text;
}

void check_bench_alike(const scenario::Scenario& a, const scenario::Scenario& b) {
  CHECK(a.seed == b.seed);
  CHECK(a.specimen.mmol_per_l == b.specimen.mmol_per_l);
  CHECK(a.specimen.mg_per_dl == b.specimen.mg_per_dl);
  CHECK(a.specimen.cells_per_ul == b.specimen.cells_per_ul);
  CHECK(a.specimen.growing_per_ml == b.specimen.growing_per_ml);
  CHECK(a.specimen.resting_per_ml == b.specimen.resting_per_ml);
  CHECK(a.specimen.life.size() == b.specimen.life.size());
  CHECK(a.specimen.preservatives.size() == b.specimen.preservatives.size());
  CHECK(a.specimen.volume_ml == b.specimen.volume_ml);
  CHECK(a.specimen.temperature_c == b.specimen.temperature_c);
  CHECK(a.specimen.target_ph == b.specimen.target_ph);
  CHECK(a.specimen.particles_mg_per_l == b.specimen.particles_mg_per_l);
  CHECK(a.specimen.urochrome_a420 == b.specimen.urochrome_a420);
  CHECK(a.specimen.stood_hours == b.specimen.stood_hours);
  CHECK(a.room_c == b.room_c);
  CHECK(a.urinometer_zero_error == b.urinometer_zero_error);
  CHECK(a.refractometer_zero_error == b.refractometer_zero_error);
  CHECK(a.reagents_out == b.reagents_out);
  CHECK(a.bottle_age_days == b.bottle_age_days);
  CHECK(a.rules.calibration_c == b.rules.calibration_c);
  CHECK(a.rules.per_degrees_c == b.rules.per_degrees_c);
  CHECK(a.asked.look == b.asked.look);
  CHECK(a.asked.specific_gravity == b.asked.specific_gravity);
  CHECK(a.asked.procedures == b.asked.procedures);
  CHECK(a.collection.has_value() == b.collection.has_value());
  CHECK(a.patient.name == b.patient.name);
  CHECK(a.story == b.story);
  REQUIRE(a.decisions.size() == b.decisions.size());
  for (std::size_t i = 0; i < a.decisions.size(); ++i) {
    CHECK(a.decisions[i].prompt == b.decisions[i].prompt);
    CHECK(a.decisions[i].options == b.decisions[i].options);
  }
}

void check_marks_alike(const scenario::Scenario& a, const scenario::Scenario& b) {
  CHECK(a.title == b.title);
  CHECK(a.level == b.level);
  CHECK(a.debrief == b.debrief);
  for (std::size_t i = 0; i < a.decisions.size(); ++i) {
    CHECK(a.decisions[i].right == b.decisions[i].right);
    CHECK(a.decisions[i].why == b.decisions[i].why);
    CHECK(a.decisions[i].weight == b.decisions[i].weight);
  }
  CHECK(a.marking.grade_weight == b.marking.grade_weight);
  CHECK(a.marking.process_weight == b.marking.process_weight);
  CHECK(a.marking.gravity_none == b.marking.gravity_none);
  CHECK(a.marking.rules.loss == b.marking.rules.loss);
  CHECK(a.marking.rules.pass_mark == b.marking.rules.pass_mark);
}

} // namespace

TEST_CASE("every shipped scenario is its two halves joined, to the bit and in its order") {
  for (const auto& file : shipped()) {
    INFO(file.string());
    const std::string text = text_of(file);
    const auto halves = scenario::halve(text, file.string());
    REQUIRE(halves);
    const auto joined = strict::join(*halves, file.string());
    REQUIRE(joined);
    const auto whole = scenario::parse(text, file.string(), catalogue());
    const auto again = scenario::parse(*joined, file.string(), catalogue());
    REQUIRE(whole);
    if (!again) {
      FAIL(scenario::to_text(again.error()));
    }
    check_bench_alike(*whole, *again);
    check_marks_alike(*whole, *again);
  }
}

TEST_CASE("the bench half of every shipped scenario is a bench, without answers, marks or titles") {
  for (const auto& file : shipped()) {
    INFO(file.string());
    const std::string text = text_of(file);
    const auto halves = scenario::halve(text, file.string());
    REQUIRE(halves);
    const auto whole = scenario::parse(text, file.string(), catalogue());
    const auto bench = scenario::parse_bench_half(halves->kept, "unknown-1.toml", catalogue());
    REQUIRE(whole);
    if (!bench) {
      FAIL(scenario::to_text(bench.error()));
    }
    check_bench_alike(*whole, *bench);
    CHECK(bench->debrief.empty());
    for (const auto& decision : bench->decisions) {
      CHECK(decision.right.empty());
      CHECK(decision.why.empty());
    }
    for (const auto& [key, words] : {std::pair{"debrief", whole->debrief}, {"title", whole->title}}) {
      CHECK(halves->kept.find(std::string("\n") + key + " =") == std::string::npos);
      CHECK(halves->kept.find(words.substr(0, 40)) == std::string::npos);
    }
    for (const auto& decision : whole->decisions) {
      CHECK(halves->kept.find(decision.why) == std::string::npos);
    }
    for (const char* key : {"right =", "why =", "level =", "[weights]", "[tolerances]", "[marking]", "#"}) {
      CHECK(halves->kept.find(std::string("\n") + key) == std::string::npos);
    }
    const auto questions = halves->kept.find("[[decision]]"); // Before it a `weight` is the patient's.
    CHECK(
        (questions == std::string::npos || halves->kept.find("\nweight =", questions) == std::string::npos));
    // And the brief a learner is shown says the same either way, but for title and level.
    const auto shown = scenario::brief_of(*bench);
    const auto before = scenario::brief_of(*whole);
    CHECK(shown.request == before.request);
    CHECK(shown.questions.size() == before.questions.size());
    CHECK(shown.tests.size() == before.tests.size());
  }
}

TEST_CASE("a bench half with an answer in it is refused") {
  const auto halves = scenario::halve(good_scenario(), "t.toml");
  REQUIRE(halves);
  CHECK(scenario::parse_bench_half(halves->kept, "t.toml", catalogue()));
  CHECK_FALSE(scenario::parse_bench_half("debrief = \"D\"\n" + halves->kept, "t.toml", catalogue()));
  CHECK_FALSE(scenario::parse_bench_half(good_scenario(), "t.toml", catalogue()));
}

TEST_CASE("what an author adds later goes into the key half, comments into neither") {
  const auto halves = scenario::halve("author = \"Somebody\"\n" + good_scenario() +
                                          "# the answer is protein\n[golden]\nanswer = \"2+\"\n",
                                      "t.toml");
  REQUIRE(halves);
  CHECK(halves->kept.find("Somebody") == std::string::npos);
  CHECK(halves->kept.find("golden") == std::string::npos);
  CHECK_THAT(halves->taken, Contains("Somebody") && Contains("2+"));
  CHECK((halves->kept + halves->taken).find("the answer is") == std::string::npos);
  CHECK_FALSE(scenario::halve("not toml at all = = 1", "t.toml"));
  CHECK_FALSE(strict::join({"a = 1\n", "a = 2\n"}, "t.toml"));
}

TEST_CASE("a seed is set where it stands and nowhere else") {
  CHECK(examination::with_seed("seed = 7\n[a]\nseed = 8\n", 9) == "seed = 9\n[a]\nseed = 8\n");
  CHECK(examination::with_seed("seeds = 7\n  seed=1\n", 9) == "seeds = 7\nseed = 9\n");
}

TEST_CASE("seeds are drawn from pseudonym, case and the pack's secret") {
  seal::Hash secret{};
  secret.fill(3);
  const auto seed = examination::seed_for(secret, "heron-07", "unknown-1");
  CHECK(seed == examination::seed_for(secret, "heron-07", "unknown-1"));
  CHECK(seed != examination::seed_for(secret, "otter-12", "unknown-1"));
  CHECK(seed != examination::seed_for(secret, "heron-07", "unknown-2"));
  CHECK((seed >= 1 && seed <= 2147483647));
  secret.fill(4);
  CHECK(seed != examination::seed_for(secret, "heron-07", "unknown-1"));
}

TEST_CASE("a plan draws a scenario, a pattern and forms for every learner, the same again") {
  const auto folder = fresh_folder("plan");
  fs::create_directories(folder / "forms");
  std::ofstream(folder / "own.toml") << good_scenario();
  std::ofstream(folder / "forms" / "heron-07.toml") << good_scenario();
  std::ofstream(folder / "forms" / "otter-12.toml") << with(good_scenario(), "1.5 g/dL", "0.5 g/dL");
  const std::string pattern = fs::directory_iterator(root / "assets" / "patterns")->path().stem().string();
  std::ofstream(folder / "exam.toml") << "title = \"T\"\nminutes = 60\ndelete_after = \"2027-07-31\"\n"
                                         "[[case]]\nscenario = \"own.toml\"\n[[case]]\npattern = \""
                                      << pattern << "\"\n[[case]]\nforms = \"forms\"\n";
  const auto plan = examination::read_plan(folder / "exam.toml");
  if (!plan) {
    FAIL(said(plan));
  }
  seal::Hash secret{};
  const auto drawn = [&] {
    auto made = examination::draw(*plan, {"heron-07", "otter-12"}, secret, assets::folder(), catalogue());
    if (!made) {
      FAIL(said(made));
    }
    return std::move(*made);
  };
  const auto students = drawn();
  REQUIRE(students.size() == 2);
  REQUIRE(students[0].cases.size() == 3);
  CHECK(students[0].cases[0].text != students[1].cases[0].text); // Another seed.
  CHECK(students[0].cases[1].text != students[1].cases[1].text); // Another patient.
  CHECK_THAT(students[1].cases[2].text, Contains("0.5 g/dL"));
  CHECK(students[0].cases[0].key == "own");
  CHECK(students[0].cases[1].key == pattern);
  CHECK(students[0].cases[2].key == "forms");
  CHECK(students[0].cases[1].text == drawn()[0].cases[1].text);
  const auto halves = examination::bench_halves(students, catalogue());
  REQUIRE(halves);
  CHECK((*halves)[1].cases[2].label == "unknown-3");
  CHECK((*halves)[1].cases[2].key.empty());

  // Forms as a plan of parallel forms lays them: a folder for every learner.
  for (const std::string who : {"heron-07", "otter-12"}) {
    fs::create_directories(folder / "class" / who);
    std::ofstream(folder / "class" / who / "unknown-2.toml")
        << with(good_scenario(), "1.5 g/dL", who == "heron-07" ? "0.5 g/dL" : "0.25 g/dL");
  }
  const auto planned = [&](const std::string& more) {
    std::ofstream(folder / "several.toml") << "title = \"T\"\nminutes = 60\ndelete_after = \"2027-07-31\"\n"
                                              "[[case]]\nforms = \"class\"\n" +
                                                  more;
    const auto several = examination::read_plan(folder / "several.toml");
    REQUIRE(several);
    return examination::draw(*several, {"heron-07", "otter-12"}, secret, assets::folder(), catalogue());
  };
  const auto named = planned("unknown = \"unknown-2\"\n");
  REQUIRE(named);
  CHECK_THAT((*named)[0].cases[0].text, Contains("0.5 g/dL"));
  CHECK_THAT((*named)[1].cases[0].text, Contains("0.25 g/dL"));
  CHECK((*named)[1].cases[0].key == "class-unknown-2");
  CHECK_THAT(said(planned("")), Contains("heron-07.toml") && Contains("unknown = \"unknown-1\""));

  std::ofstream(folder / "wrong.toml") << "title = \"T\"\nminutes = 0\ndelete_after = \"soon\"\n[[case]]\n";
  CHECK_THAT(said(examination::read_plan(folder / "wrong.toml")),
             Contains("minutes") && Contains("a day such as") && Contains("or forms = \"FOLDER\""));
  fs::remove_all(folder);
}
