#include "engine/scoring/explain.hpp"
#include "engine/scoring/rulebook.hpp"

#include <catch2/catch.hpp>
#include <fstream>
#include <sstream>

using namespace matula::scoring;

namespace {
std::string shipped_text() {
  std::ifstream file(std::string(MATULA_SOURCE_DIR) + "/assets/scoring/rules.toml");
  std::ostringstream text;
  text << file.rdbuf();
  return text.str();
}
} // namespace

TEST_CASE("The shipped rules load, each with a source and a sentence") {
  const auto book = load_rulebook(std::string(MATULA_SOURCE_DIR) + "/assets");
  REQUIRE(book.has_value());
  CHECK(book->tests.size() >= 3);
  CHECK(book->rules.size() >= 25);
  for (const auto& rule : book->rules) {
    CAPTURE(rule.key);
    CHECK_FALSE(rule.source.empty());
    CHECK(book->part_shares.count(rule.part) == 1);
  }
  REQUIRE(book->find_test("benedict") != nullptr);
  CHECK(book->find_test("benedict")->scale.kind == matula::reading::ScaleKind::CopperColour);
}

TEST_CASE("A rule about a fact that nobody measures is refused where it stands") {
  auto text = shipped_text();
  const std::string fact = "fact = \"thermometer_used\"";
  text.replace(text.find(fact), fact.size(), "fact = \"moon_phase\"");
  const auto book = parse_rulebook(text, "rules.toml");
  REQUIRE_FALSE(book.has_value());
  CHECK(book.error().front().found.find("moon_phase") != std::string::npos);
  CHECK(book.error().front().line > 0);
}

TEST_CASE("A placeholder that names nothing is refused") {
  auto text = shipped_text();
  text.replace(text.find("{jar_ml}"), 8, "{jar_cl}");
  const auto book = parse_rulebook(text, "rules.toml");
  REQUIRE_FALSE(book.has_value());
  CHECK(book.error().front().expected.find("{jar_cl}") != std::string::npos);
}

TEST_CASE("An unknown key is refused") {
  CHECK_FALSE(parse_rulebook(shipped_text() + "wieght = 3\n", "rules.toml").has_value());
}

TEST_CASE("Broken TOML is an error value") {
  CHECK_FALSE(parse_rulebook("[ordinal", "x").has_value());
}

TEST_CASE("Sentences carry the learner's own numbers") {
  Rule rule;
  rule.fact = "seconds_above_90c";
  rule.min = 75;
  const Facts facts{{"seconds_above_90c", 35.4}, {"heated_s", 95}};
  CHECK(fill("above 90 °C for {found} s of {heated_time}, at least {min_time}", rule, facts) ==
        "above 90 °C for 35 s of 1 min 35 s, at least 1 min 15 s");
  CHECK(say_time(600) == "10 min");
  CHECK(say_number(0.449) == "0.45");
  CHECK(say_number(5.02) == "5");
  CHECK(say_gravity(1.0234) == "1.023");
  CHECK(say_correction(-0.001) == "-0.001");
}
