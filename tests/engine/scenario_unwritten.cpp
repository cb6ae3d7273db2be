// What is still missing on a worksheet before it is handed in.
#include "engine/scenario/unwritten.hpp"

#include <catch2/catch.hpp>

using namespace matula;

namespace {

scenario::Brief small_brief() {
  scenario::Brief brief;
  brief.asks_gravity = true;
  brief.tests.push_back({"Rothera's test", "Ketones", "rothera.grade", {"negative", "1+"}, "", "", {}});
  brief.questions.push_back({"next", "What is to be done?", {}});
  return brief;
}

} // namespace

TEST_CASE("A worksheet names what nobody has written, in its own order") {
  const auto missing = scenario::unwritten(small_brief(), {{"sg.zero", "1.000"}, {"decision.next", "wait"}});
  CHECK(missing == std::vector<std::string>{"temperature of the specimen", "the float in the specimen",
                                            "the steps of the specific gravity", "specific gravity reported",
                                            "Rothera's test"});
}

TEST_CASE("One written step shows that the gravity was worked out, and a full sheet misses nothing") {
  CHECK(scenario::unwritten(small_brief(), {{"sg.zero", "1.000"},
                                            {"sg.temperature", "22"},
                                            {"sg.reading", "1.019"},
                                            {"sg.step.temperature", "1.020"},
                                            {"sg.corrected", "1.020"},
                                            {"rothera.grade", "1+"},
                                            {"decision.next", "wait"}})
            .empty());
}

TEST_CASE("Who refuses the specimen owes the bench nothing") {
  auto brief = small_brief();
  brief.reception.emplace();
  CHECK(scenario::unwritten(brief, {}).front() == "what you do with the specimen");
  CHECK(scenario::unwritten(brief, {{"reception", "refuse"}}).empty());
}
