// The first case's actions leave the bench in one state, to the last bit, whatever the optimiser did.
// When the model itself is changed: run with MATULA_UPDATE_GOLDEN=1 and commit the new bench_golden.txt.
#include "cases_support.hpp"

#include "engine/sitting/session.hpp"
#include "engine/sitting/steps.hpp"
#include "sim/bench/bench.hpp"

#include <cstdlib>
#include <fstream>
#include <iomanip>
#include <sstream>

using namespace matula;

namespace {

const std::filesystem::path golden_file = MATULA_SOURCE_DIR "/tests/engine/bench_golden.txt";

std::string hash_after_first_case() {
  const auto steps = sitting::read_steps(test::case_folder / "first_case.steps.jsonl");
  if (!steps) {
    FAIL(scenario::to_text(steps.error()));
  }
  const auto scenario = test::load_case("first_case");
  sitting::Session session(test::world(), scenario);
  for (const auto& event : *steps) {
    session.take(event);
  }
  std::ostringstream text;
  text << std::hex << std::setw(16) << std::setfill('0') << bench::state_hash(session.state());
  return text.str();
}

} // namespace

TEST_CASE("The first case leaves the same bits as it did when the golden state was written") {
  const auto found = hash_after_first_case();
  if (std::getenv("MATULA_UPDATE_GOLDEN") != nullptr) {
    std::ofstream(golden_file) << found << '\n';
  }
  std::string expected;
  std::ifstream(golden_file) >> expected;
  INFO("If the change of the model is meant: MATULA_UPDATE_GOLDEN=1, then commit " << golden_file);
  CHECK(found == expected);
}

TEST_CASE("Played twice, the first case leaves the same bits") {
  CHECK(hash_after_first_case() == hash_after_first_case());
}
