// How a specimen's way to the bench is written, and what is said about slips in it.
#include "scenario_support.hpp"

#include <catch2/catch.hpp>

using namespace matula;
using tests::good_scenario;
using tests::with;

namespace {

const std::string way = R"(other_organics = "25 mmol/L"
[specimen.cells]
erythrocytes = "50 /uL"
hyaline_casts = "500 /mL"
[specimen.infection]
escherichia = "2e5 /mL"
[specimen.contamination]
proteus = "100 /mL"
[[specimen.leg]]
hours = "30 min"
temperature = "22 C"
open = true
light = "500 lx"
[[specimen.leg]]
hours = "8 h"
temperature = "4 C"
[[specimen.preservative]]
bottle = "sodium_fluoride_powder"
dose_per_100_ml = "1 g"
at = "30 min"
[[specimen.preservative]]
bottle = "formalin_40"
dose_per_100_ml = "0.5 mL"
[bench])";

scenario::Problem only_problem(const std::string& from, const std::string& to) {
  const std::string text = with(with(good_scenario(), "[bench]", way), from, to);
  const auto read = scenario::parse(text, "case.toml", tests::catalogue());
  REQUIRE_FALSE(read.has_value());
  INFO(scenario::to_text(read.error()));
  REQUIRE(read.error().size() == 1);
  return read.error().front();
}

} // namespace

TEST_CASE("Cells, organisms, legs and preservatives are read in their units") {
  const auto read = scenario::parse(with(good_scenario(), "[bench]", way), "case.toml", tests::catalogue());
  if (!read) {
    FAIL(scenario::to_text(read.error()));
  }
  const specimen::Specimen& s = read->specimen;
  REQUIRE(s.cells_per_ul.size() == 2);
  CHECK(s.cells_per_ul[0].second == 50);
  CHECK(s.cells_per_ul[1].second == Approx(0.5));
  CHECK(s.growing_per_ml.at(0).second == 2e5);
  CHECK(s.resting_per_ml.at(0).first == "proteus");
  REQUIRE(s.life.size() == 2);
  CHECK(s.life[0].hours == Approx(0.5));
  CHECK(s.life[0].open);
  CHECK(s.life[0].lux == 500);
  CHECK_FALSE(s.life[1].open);
  CHECK(s.life[1].lux == 0);
  REQUIRE(s.preservatives.size() == 2);
  CHECK(s.preservatives[0].ml_per_100_ml == Approx(1 / 2.558));
  CHECK(s.preservatives[0].at_hours == Approx(0.5));
  CHECK(s.preservatives[1].ml_per_100_ml == 0.5);
}

TEST_CASE("A specimen with a way needs no temperature of its own; without one it does") {
  const auto with_way =
      scenario::parse(with(with(good_scenario(), "[bench]", way), "temperature = \"22 C\"\nph", "ph"),
                      "c.toml", tests::catalogue());
  CHECK(with_way.has_value());
  const auto without = scenario::parse(with(good_scenario(), "temperature = \"22 C\"\nph", "ph"), "c.toml",
                                       tests::catalogue());
  REQUIRE_FALSE(without.has_value());
  CHECK(without.error().front().expected.find("a quantity from 2 to 40 C") != std::string::npos);
}

TEST_CASE("Slips in the way are named with what to write") {
  CHECK(only_problem("\"2e5 /mL\"", "\"2e5 per mL\"").expected.find("another unit than 'per mL'") == 0);
  CHECK(only_problem("\"50 /uL\"", "\"50000 /uL\"").expected.find("from 0 to 2e+04 /uL") !=
        std::string::npos);
  CHECK(only_problem("\"8 h\"", "\"800 h\"").expected.find("from 0 to 168 h") != std::string::npos);
  CHECK(only_problem("temperature = \"4 C\"", "temperature = \"-20 C\"").expected.find("from 1 to 45 C") !=
        std::string::npos);
  CHECK(only_problem("\"500 lx\"", "500").expected.find("a number with its unit, in quotes") == 0);
  CHECK(only_problem("formalin_40", "formalin").found.find("formalin") != std::string::npos);
  CHECK(only_problem("\"0.5 mL\"", "\"50 mL\"").expected.find("from 0 to 20 mL") != std::string::npos);
  CHECK(only_problem("other_organics = \"25 mmol/L\"", "").expected.find("'other_organics' in") == 0);
  CHECK(only_problem("escherichia =", "eschericia =").expected.find("escherichia") != std::string::npos);
}

namespace {

const std::string delivery = R"([collection]
number = "SB 1"
kind = "midstream_female"
request = ["protein"]
passed = "08:00"
received = "16:30"
container = "clean_cup"
storage = "refrigerated"
preservative = "fluoride"
[bench])";

/// The slip as the checker names it, in a case with the way above and a delivery that agrees with it.
scenario::Problems slips(const std::string& from, const std::string& to) {
  const std::string whole = with(with(good_scenario(), "[bench]", way), "[bench]", delivery);
  const auto read = scenario::parse(with(whole, from, to), "case.toml", tests::catalogue());
  return read ? scenario::Problems{} : read.error();
}

bool named(const scenario::Problems& problems, const char* words) {
  INFO(scenario::to_text(problems));
  return problems.size() == 1 && scenario::to_text(problems).find(words) != std::string::npos;
}

} // namespace

TEST_CASE("A form that says what is not so is reported, unless the case declares it") {
  CHECK(scenario::to_text(slips("[bench]", "[bench]")) == "");
  const char* label = "preservative = \"fluoride\"";
  CHECK(named(slips(label, "preservative = \"thymol\""), "which is what [[specimen.preservative]] puts in"));
  CHECK(named(slips(label, ""), "preservative = \"fluoride\", which is what"));
  CHECK(named(slips(label, "preservative = \"flouride\""), "did you mean 'fluoride'"));
  CHECK(slips(label, "preservative = \"thymol\"\npreservative_mislabelled = true").empty());
  CHECK(named(slips(label, "preservative = \"fluoride\"\npreservative_mislabelled = true"), "agree"));
  CHECK(slips(label, "preservative = \"formalin\"").empty()); // both were put in, the label names one
  CHECK(named(slips("passed = \"08:00\"", "passed = \"10:00\""), "last 510 min: passed = \"08:00\""));
  CHECK(slips("passed = \"08:00\"", "passed = \"10:00\"\ntime_miswritten = true").empty());
  CHECK(named(slips("passed = \"08:00\"", "passed = \"08:00\"\ntime_miswritten = true"), "no such line"));
  CHECK(named(slips("temperature = \"4 C\"", "temperature = \"24 C\""),
              "no leg of the specimen is in the cold"));
}
