#include "scenario_support.hpp"

#include "engine/strict/file.hpp"
#include "sim/specimen/specimen.hpp"

#include <catch2/catch.hpp>

#include <filesystem>
#include <set>

using namespace matula;

TEST_CASE("Every shipped scenario is good, has its own seed, and its specimen can be made") {
  int count = 0;
  std::set<std::uint64_t> seeds;
  for (const auto& entry : std::filesystem::directory_iterator(MATULA_SOURCE_DIR "/scenarios")) {
    if (entry.path().extension() != ".toml") {
      continue;
    }
    const auto read = scenario::load(entry.path(), tests::catalogue());
    if (!read) {
      FAIL_CHECK(scenario::to_text(read.error()));
      continue;
    }
    INFO(read->key);
    ++count;
    CHECK(seeds.insert(read->seed).second);
    const bool counter_only = read->collection && !read->asked.look && read->asked.procedures.empty();
    CHECK(read->decisions.size() >= (counter_only ? 1 : 2));
    CHECK(read->decisions.size() <= 2);
    CHECK(specimen::make_liquid(read->specimen, tests::catalogue()).volume_ml > 0);
  }
  CHECK(count >= 14);
}

TEST_CASE("Readers answer every seed of the fuzzers, broken or not, without falling over") {
  int read_files = 0;
  for (const auto& entry :
       std::filesystem::directory_iterator(MATULA_SOURCE_DIR "/tests/fuzz/seeds/scenario")) {
    std::string text;
    REQUIRE(strict::read_text(entry.path(), text));
    const auto read = scenario::parse(text, "seed.toml", tests::catalogue());
    CHECK((read.has_value() || !scenario::to_text(read.error()).empty()));
    ++read_files;
  }
  CHECK(read_files >= 3);
}
