// What a newcomer met at the bench and was marked for wrongly: the marks of small sittings, worked to the
// point.
#include "played_support.hpp"

#include "engine/sitting/steps.hpp"

#include <algorithm>
#include <string>

using namespace matula;

namespace {

scoring::Report marks_of(const std::string& key, const std::string& steps) {
  const auto log = sitting::parse_steps(steps, "steps");
  if (!log) {
    FAIL(scenario::to_text(log.error()));
  }
  return scoring::score(test::world(), test::load_case(key), *log);
}

const scoring::Mark* find(const scoring::Report& report, const std::string& item) {
  const auto found = std::find_if(report.marks.begin(), report.marks.end(),
                                  [&](const scoring::Mark& mark) { return mark.item == item; });
  return found == report.marks.end() ? nullptr : &*found;
}

const std::string dressed = R"({"do":"protect","gloves":true,"goggles":true}
{"do":"mix","vessel":"specimen","manner":"swirl","seconds":10}
)";

/// Rothera's test, the last shake ending in the very second in which the ammonia goes in.
std::string ring(const std::string& afterwards) {
  return dressed + R"({"do":"pour","from":"specimen","to":"tube-1","volume_ml":5}
{"do":"dispense","reagent":"rothera_powder","to":"tube-1","volume_ml":5}
{"do":"mix","vessel":"tube-1","manner":"invert","seconds":30}
{"do":"hood","on":true}
{"do":"dispense","reagent":"ammonia_25","to":"tube-1","volume_ml":1.5,"gently":true}
)" + afterwards +
         R"({"wait":200}
{"do":"record","item":"rothera.grade","value":"3+"}
{"do":"finish"}
)";
}

/// The heat test of the guide, with the times a learner takes.
std::string boiled(int first_s, int again_s, int until_read_s) {
  const std::string flame = R"({"do":"move","vessel":"tube-1","place":"flame","height":0.85,"moving":true}
{"wait":)";
  return dressed + R"({"do":"pour","from":"specimen","to":"tube-1","volume_ml":9}
{"do":"flame","on":true}
)" + flame +
         std::to_string(first_s) +
         R"(}
{"do":"move","vessel":"tube-1","place":"rack"}
{"do":"dispense","reagent":"acetic_acid_10","to":"tube-1","volume_ml":0.2}
)" + flame +
         std::to_string(again_s) +
         R"(}
{"do":"move","vessel":"tube-1","place":"rack"}
{"do":"flame","on":false}
{"wait":)" +
         std::to_string(until_read_s) + R"(}
{"do":"look","vessel":"tube-1","card":"black"}
{"do":"record","item":"heat.grade","value":"2+"}
{"do":"finish"}
)";
}

} // namespace

TEST_CASE("A shake that ends as the ammonia goes in was before it") {
  const auto before = marks_of("sweet_breath", ring(""));
  CHECK(find(before, "process.rothera.not_shaken") == nullptr);
  const auto after =
      marks_of("sweet_breath", ring(R"({"do":"mix","vessel":"tube-1","manner":"invert","seconds":3}
)"));
  CHECK(find(after, "process.rothera.not_shaken") != nullptr);
}

TEST_CASE("A figure without a float and without lines is no calculation") {
  const auto invented =
      marks_of("after_the_marathon", dressed + R"({"do":"record","item":"sg.reading","value":"1.030"}
{"do":"record","item":"sg.corrected","value":"1.030"}
{"do":"finish"}
)");
  CHECK(invented.earned(scoring::Ledger::Arithmetic) == 0);
  CHECK(invented.possible(scoring::Ledger::Arithmetic) > 0);
  REQUIRE(find(invented, "sg.corrected") != nullptr);
  CHECK(find(invented, "sg.corrected")->reason.find("no step was written") != std::string::npos);
}

TEST_CASE("Whose specimen it is earns nothing from who never decided about it, and ends no sitting") {
  const auto undecided = marks_of("after_the_marathon", dressed + R"({"do":"finish"}
)");
  REQUIRE(find(undecided, "safety.identity") != nullptr);
  CHECK(find(undecided, "safety.identity")->earned == 0);
  CHECK_FALSE(undecided.safety_stop);
  const auto decided = marks_of("after_the_marathon", R"({"do":"record","item":"reception","value":"accept"}
)" + dressed + R"({"do":"finish"}
)");
  CHECK(find(decided, "safety.identity")->earned == find(decided, "safety.identity")->possible);
}

TEST_CASE("The heat test of the first case reads 2+ for every way of doing it within the method") {
  for (const int first_s : {70, 85, 133}) {
    for (const int again_s : {15, 30}) {
      for (const int until_read_s : {10, 60}) {
        CAPTURE(first_s, again_s, until_read_s);
        const auto report = marks_of("first_case", boiled(first_s, again_s, until_read_s));
        const auto* grade = find(report, "heat.grade");
        REQUIRE(grade != nullptr);
        CHECK(grade->earned == grade->possible);
        CHECK(find(report, "heat.specimen") == nullptr);
      }
    }
  }
}

TEST_CASE("A tube that differs from the book's is called invalid only where the procedure was at fault") {
  // Unmixed acid: a fault.
  const auto careless =
      marks_of("first_case", dressed + R"({"do":"pour","from":"specimen","to":"tube-2","volume_ml":3}
{"do":"dispense","reagent":"ssa_3","to":"tube-2","volume_ml":3,"gently":true}
{"wait":20}
{"do":"record","item":"ssa.grade","value":"negative"}
{"do":"finish"}
)");
  const auto* note = find(careless, "ssa.specimen");
  REQUIRE(note != nullptr);
  CHECK(note->reason.find("must be repeated") != std::string::npos);
  CHECK(note->entered.empty()); // What stands there is not what the learner wrote.
  // Boiled longer than the recipe, yet within the method: this specimen lies near a line.
  const auto careful = marks_of("concentrated", boiled(130, 40, 20));
  const auto* near_a_line = find(careful, "heat.specimen");
  REQUIRE(near_a_line != nullptr);
  CHECK(near_a_line->reason.find("No rule of the procedure was broken") != std::string::npos);
}
