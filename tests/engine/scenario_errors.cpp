#include "scenario_support.hpp"

#include <catch2/catch.hpp>

using namespace matula;
using tests::good_scenario;
using tests::with;

namespace {

/// The only problem of a scenario spoilt in one place.
scenario::Problem only_problem(const std::string& from, const std::string& to) {
  const auto read = scenario::parse(with(good_scenario(), from, to), "case.toml", tests::catalogue());
  REQUIRE_FALSE(read.has_value());
  INFO(scenario::to_text(read.error()));
  REQUIRE(read.error().size() == 1);
  return read.error().front();
}

} // namespace

TEST_CASE("A good scenario is read, its quantities turned into the specimen's units") {
  const auto read = scenario::parse(good_scenario(), "cases/first.toml", tests::catalogue());
  if (!read) {
    FAIL(scenario::to_text(read.error()));
  }
  CHECK(read->key == "first");
  CHECK(read->seed == 7);
  CHECK(read->content_hash.size() == 16);
  CHECK_FALSE(read->asked.look);
  CHECK(read->asked.has("ssa"));
  for (const auto& [key, amount] : read->specimen.mg_per_dl) {
    const double expected = key == "albumin" ? 150 : key == "glucose" ? 1500 : 280 * 60.055 / 10;
    CHECK(amount == Approx(expected));
  }
  REQUIRE(read->decisions.size() == 1);
  CHECK(read->decisions[0].options[1].first == "b");
}

TEST_CASE("An unknown unit names the units that are allowed") {
  const auto problem = only_problem("urea = \"280 mmol/L\"", "urea = \"280 mmol/dL\"");
  CHECK(problem.line == 18);
  CHECK(problem.text == "urea = \"280 mmol/dL\"");
  CHECK(problem.expected.find("another unit than 'mmol/dL'") == 0);
  CHECK(problem.expected.find("units: mmol/L, mol/L") != std::string::npos);
}

TEST_CASE("A salt is not written by weight") {
  const auto problem = only_problem("urea = \"280 mmol/L\"", "sodium = \"2 g/L\"");
  CHECK(problem.expected.find("another unit than 'g/L'") == 0);
}

TEST_CASE("A quantity out of range names the range") {
  const auto problem = only_problem("\"60 mL\"", "\"600 mL\"");
  CHECK(problem.line == 13);
  CHECK(problem.expected.find("from 5 to 150 mL") != std::string::npos);
}

TEST_CASE("A bare number is told to carry its unit") {
  const auto problem = only_problem("\"22 C\"\nph", "22\nph");
  CHECK(problem.expected.find("a number with its unit, in quotes") == 0);
  CHECK(only_problem("\"22 C\"\nph", "\"22\"\nph").expected.find("a number with its unit") == 0);
}

TEST_CASE("Unknown keys, substances, bottles and tests are refused with what was probably meant") {
  CHECK(only_problem("seed = 7", "seed = 7\nlevle = 1").found == "unknown key 'levle'");
  CHECK(only_problem("albumin =", "albumen =").expected == "did you mean 'albumin'?");
  CHECK(only_problem("\"ssa_3\", \"b", "\"ssa_3\", \"ssa_4\", \"b").expected.find("did you mean 'ssa_3'") ==
        0);
  CHECK(only_problem("[\"heat\"", "[\"heet\"").expected == "did you mean 'heat'?");
  CHECK(only_problem("urea =", "copper_ii =").found == "unknown key 'copper_ii'");
}

TEST_CASE("What is missing, twice or not among the options is refused") {
  CHECK(only_problem("name = \"N\"\n", "").found == "no 'name'");
  CHECK(only_problem("right = \"a\"", "right = \"c\"").expected.find("the key of one of the options") == 0);
  CHECK(only_problem("b = \"B\"\n", "").expected.find("at least two answers") == 0);
  CHECK(only_problem("\"ssa_3\", ", "").expected.find("begins with 'ssa'") != std::string::npos);
  CHECK(only_problem("[[decision]]", "[tolerances]\nspecific_gravity_full = 0.004\n[[decision]]")
            .expected.find("more than what earns full marks") != std::string::npos);
}

TEST_CASE("Every problem is reported at once, in the order of the lines, with the line and a caret") {
  auto text = with(good_scenario(), "\"60 mL\"", "\"600 mL\"");
  text = with(text, "level = \"first\"", "level = \"frist\"");
  text = with(text, "ph = 6.0", "ph = 60");
  text = with(text, "key = \"meaning\"", "key = \"The Meaning\"");
  const auto read = scenario::parse(text, "case.toml", tests::catalogue());
  REQUIRE_FALSE(read.has_value());
  REQUIRE(read.error().size() == 4);
  CHECK(read.error()[0].line == 2);
  CHECK(read.error()[1].line == 13);
  CHECK(read.error()[2].line == 15);
  CHECK(read.error()[3].line == 27);
  const std::string words = scenario::to_text(read.error());
  CHECK(words.find("case.toml:15:6: found ph = 60") != std::string::npos);
  CHECK(words.find("    ph = 60\n         ^\n") != std::string::npos);
}
