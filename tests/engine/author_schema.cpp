// The published JSON Schema knows every key the reader knows, and no other.
#include "author_support.hpp"

#include "engine/author/number_pattern.hpp"
#include "engine/author/schema.hpp"
#include "engine/strict/file.hpp"
#include "engine/strict/known.hpp"

#include <nlohmann/json.hpp>

#include <cstdlib>
#include <fstream>
#include <functional>
#include <regex>
#include <set>

using namespace matula;

namespace {

/// A text in which every table stands that a case can have.
const std::string everything = R"(title = "T"
level = "first"
seed = 7
story = "S"
debrief = "D"
[patient]
name = "N"
[specimen]
volume = "60 mL"
[specimen.dissolved]
urea = "280 mmol/L"
[specimen.solids]
[specimen.cells]
[specimen.infection]
[specimen.contamination]
[[specimen.leg]]
hours = "1 h"
[[specimen.preservative]]
bottle = "thymol"
[collection]
kind = "day"
[[collection.void]]
at = "07:00"
[bench]
room = "22 C"
[bench.bottle_age]
[laboratory_rules]
[asked]
tests = ["heat"]
[weights]
[tolerances]
[marking]
[[decision]]
key = "a"
[decision.options]
[review]
[[review.change]]
version = "1"
[[review.worked]]
steps = "a"
[review.worked.marks]
)";

std::set<std::string> keys_of(const nlohmann::json& schema) {
  std::set<std::string> keys;
  const auto properties = schema.value("properties", nlohmann::json::object());
  for (const auto& [key, value] : properties.items()) {
    keys.insert(key);
  }
  return keys;
}

/// The part of the schema a path of the reader leads to.
nlohmann::json part_of(nlohmann::json schema, std::string path) {
  while (!path.empty()) {
    const auto dot = path.find('.');
    auto step = path.substr(0, dot);
    path = dot == std::string::npos ? "" : path.substr(dot + 1);
    const bool list = step.size() > 2 && step.substr(step.size() - 2) == "[]";
    step = list ? step.substr(0, step.size() - 2) : step;
    schema = schema.at("properties").at(step);
    schema = list ? schema.at("items") : schema;
  }
  return schema;
}

} // namespace

TEST_CASE("the published schema is the one that is made from limits, bottles and tests") {
  const std::string file = MATULA_SOURCE_DIR "/scenarios/scenario.schema.json";
  const auto made = author::scenario_schema(test::shelf());
  if (std::getenv("MATULA_UPDATE_GOLDEN") != nullptr) {
    std::ofstream(file) << made;
  }
  std::string published;
  REQUIRE(strict::read_text(file, published));
  CHECK(published == made);
}

TEST_CASE("every key the reader asks for stands in the schema, and the other way round") {
  const auto schema = nlohmann::json::parse(author::scenario_schema(test::shelf()));
  const strict::Listening listening;
  (void)scenario::parse(everything, "everything.toml", test::shelf().world->catalogue);
  const auto& read = listening.heard();
  CHECK(read.size() >= 23);
  for (const auto& [path, keys] : read) {
    if (path == "decision[].options" || path == "bench.bottle_age") {
      continue; // Their keys are names.
    }
    INFO("[" << path << "]");
    CHECK(keys_of(part_of(schema, path)) == keys);
  }
}

TEST_CASE("no table of the schema takes what it does not know") {
  const auto schema = nlohmann::json::parse(author::scenario_schema(test::shelf()));
  const std::function<void(const nlohmann::json&)> walk = [&](const nlohmann::json& node) {
    if (node.is_object() && node.contains("properties") && node.value("type", "") == "object") {
      CHECK(node.at("unevaluatedProperties") == false);
      CHECK(node.contains("description"));
    }
    for (const auto& inner : node) {
      if (inner.is_structured()) {
        walk(inner);
      }
    }
  };
  walk(schema);
}

TEST_CASE("patterns for ranges take what is inside and nothing else") {
  for (const auto& [low, high] :
       std::vector<std::pair<long long, long long>>{{0, 7}, {5, 150}, {0, 700}, {17, 2304}, {1, 1}}) {
    const std::regex pattern("^(?:" + author::whole_numbers(low, high) + ")$");
    for (long long n = 0; n <= 3000; ++n) {
      CHECK(std::regex_match(std::to_string(n), pattern) == (n >= low && n <= high));
    }
  }
  const std::regex volume(author::quantity_pattern({{{"mL", 1}, {"L", 1000}}, 5, 150}));
  for (const char* good : {"60 mL", "5 mL", "150.0 mL", "0.06 L", " 7.5mL", "6e1 mL"}) {
    CHECK(std::regex_match(good, volume));
  }
  for (const char* bad : {"60 ml", "4.9 mL", "151 mL", "150.5 mL", "2 L", "60", "-6 mL", "mL"}) {
    CHECK_FALSE(std::regex_match(bad, volume));
  }
}
