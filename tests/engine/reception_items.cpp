// The counter's lines of the worksheet, and the section [collection] of a case.
#include "scenario_support.hpp"

#include "engine/reception/items.hpp"
#include "engine/sitting/items.hpp"

#include <catch2/catch.hpp>

using namespace matula;
using tests::good_scenario;
using tests::with;

namespace {

const std::string section = R"([collection]
number = "1"
kind = "day"
request = ["protein_24h"]
start = "07:00"
stop = "07:00 day 2"
received = "08:00 day 2"
container = "day_bottle"
weight = "70 kg"
sex = "male"
[[collection.void]]
at = "07:00"
volume = "200 mL"
kept = false
[[collection.void]]
at = "07:00 day 2"
volume = "300 mL"
)";

std::string scenario_text() {
  return with(good_scenario(), "[bench]", section + "[bench]");
}

scenario::Problem only_problem(const std::string& from, const std::string& to) {
  const auto read = scenario::parse(with(scenario_text(), from, to), "case.toml", tests::catalogue());
  REQUIRE_FALSE(read.has_value());
  INFO(scenario::to_text(read.error()));
  REQUIRE(read.error().size() == 1);
  return read.error().front();
}

bool wants(const scenario::Problem& problem, const std::string& words) {
  INFO(problem.expected);
  return problem.expected.find(words) != std::string::npos;
}

} // namespace

TEST_CASE("A delivery is read; what is left out comes from form and specimen") {
  const auto read = scenario::parse(scenario_text(), "case.toml", tests::catalogue());
  if (!read) {
    FAIL(scenario::to_text(read.error()));
  }
  REQUIRE(read->collection);
  const auto& delivery = *read->collection;
  CHECK(delivery.form_name == "N");
  CHECK(delivery.label_name == "N");
  CHECK(delivery.label_number == "1");
  CHECK(delivery.volume_ml == Approx(300));
  REQUIRE(delivery.day);
  CHECK(delivery.day->voids[1].protein_g_per_l == Approx(1.5)); // 150 mg/dL of albumin in the specimen.
  CHECK_FALSE(scenario::parse(good_scenario(), "case.toml", tests::catalogue())->collection);
}

TEST_CASE("Faults of the section are named with what to write") {
  CHECK(wants(only_problem("kind = \"day\"", "kind = \"random\""), "because there are voids"));
  CHECK(wants(only_problem("stop = \"07:00 day 2\"", "stop = \"06:00\""), "a time after the start"));
  CHECK(wants(only_problem("received = \"08:00 day 2\"", "received = \"8 o'clock\""), "a time such as"));
  CHECK(wants(only_problem("received = \"08:00 day 2\"", "received = \"06:00 day 2\""),
              "after the urine was passed"));
  CHECK(wants(only_problem("start = \"07:00\"\n", ""), "the time as written, because there are voids"));
  CHECK(wants(only_problem("\"07:00 day 2\"\nvolume", "\"06:00\"\nvolume"), "after that of the void before"));
  CHECK(wants(only_problem("\"300 mL\"", "\"3000 mL\""), "from 5 to 1500 mL"));
  CHECK(wants(only_problem("\"300 mL\"", "\"300 mL\"\nprotein = \"4 g/L\""),
              "together make the specimen's protein"));
  CHECK(wants(only_problem("\"300 mL\"", "\"300 mL\"\nbottle = \"night\""), "\"day\" for every void"));
  CHECK(wants(only_problem("\"protein_24h\"", "\"protien_24h\""), "did you mean 'protein_24h'"));
  CHECK(only_problem("sex = \"male\"", "sex = \"male\"\nweigth = 1").found == "unknown key 'weigth'");
}

TEST_CASE("Items of the counter: known ones, the words they take, and who asks them") {
  const auto read = scenario::parse(scenario_text(), "case.toml", tests::catalogue());
  REQUIRE(read);
  const auto refusal = [&](const std::string& item, const std::string& value) {
    return sitting::refuse_record(*read, {item, value});
  };
  CHECK(refusal("reception", "qualify").empty());
  CHECK(refusal("reception.fault.unlabelled", "yes").empty());
  CHECK(refusal("day.counts.2", "no").empty());
  CHECK(refusal("day.protein_g", "4,2").empty());
  CHECK(refusal("day.band", "").empty());
  CHECK(refusal("reception", "perhaps").find("'perhaps' is no answer") == 0);
  CHECK(refusal("reception.fault.unlabeled", "yes").find("did you mean 'unlabelled'") != std::string::npos);
  CHECK(refusal("day.counts.3", "yes").find("this case asks no") == 0);
  CHECK(refusal("day.pattern", "none").find("this case asks no") == 0); // One bottle.
  CHECK(refusal("day.protein_g", "much").find("is no number") != std::string::npos);
  CHECK_FALSE(sitting::unknown_item("day.protien_g").empty());
  CHECK_FALSE(sitting::unknown_item("day.counts.0").empty());
  const auto plain = scenario::parse(good_scenario(), "case.toml", tests::catalogue());
  CHECK(sitting::refuse_record(*plain, {"reception", "accept"}) == "this case asks nothing of the reception");
}
