// Every case of the counter, by the book and with the slips students make: kept as sittings beside the cases.
#include "played_support.hpp"

#include "engine/generator/generate.hpp"
#include "engine/reception/book.hpp"
#include "engine/reception/judge.hpp"
#include "engine/sitting/session.hpp"
#include "engine/sitting/steps.hpp"

#include <algorithm>
#include <cstdlib>
#include <iostream>

using namespace matula;
using scoring::Ledger;
using test::standards;

namespace {

struct Meant {
  const char* key;
  const char* verdict;
  const char* fault;  ///< One of its faults; "" for none.
  bool stop;          ///< Whether the flawed sitting is stopped.
  int interpretation; ///< What the flawed sitting earns,
  int arithmetic;
};

// The verdict is worked out by the rules from the delivery; here stands what a competent student must come
// to.
constexpr Meant meant[] = {{"reception_unlabelled", "refuse", "unlabelled", true, 0, 0},
                           {"reception_mismatch", "refuse", "number", true, 3, 0},
                           {"reception_old", "refuse", "too_old", false, 7, 0},
                           {"reception_catheter_late", "qualify", "too_old", false, 4, 0},
                           {"reception_wrong_preservative", "qualify", "wrong_preservative", false, 7, 0},
                           {"reception_lid_and_leak", "refuse", "label_on_lid", false, 14, 0},
                           {"reception_in_order", "accept", "", false, 0, 0},
                           {"day_collection_complete", "accept", "", false, 23, 14},
                           {"day_collection_first_void_kept", "refuse", "first_void", false, 15, 12},
                           {"orthostatic_pair", "accept", "", false, 23, 20},
                           {"day_protein", "accept", "", false, 23, 28}};

scoring::Report play(const std::string& key, const std::string& steps) {
  const auto scenario = test::load_case(key);
  const auto log = sitting::read_steps(test::case_folder / "steps" / (steps + ".jsonl"));
  if (!log) {
    FAIL(scenario::to_text(log.error()));
  }
  sitting::Session session(test::world(), scenario);
  for (const auto& event : *log) {
    const auto outcome = session.take(event);
    INFO(outcome.refused_because);
    CHECK(outcome.done);
  }
  auto report = scoring::score(test::world(), standards(), scenario, *log);
  if (std::getenv("MATULA_PRINT") != nullptr) {
    std::cout << steps << ' ' << report.earned(Ledger::Interpretation) << ' '
              << report.earned(Ledger::Arithmetic) << '\n';
  }
  return report;
}

} // namespace

TEST_CASE("Each case at the counter has its verdict and its fault, and by the book it earns every mark") {
  for (const Meant& one : meant) {
    DYNAMIC_SECTION(one.key) {
      const auto scenario = test::load_case(one.key);
      REQUIRE(scenario.collection);
      const auto judgement = judge(*scenario.collection, *reception::shipped_book());
      CHECK(to_word(judgement.verdict) == one.verdict);
      CHECK((one.fault[0] == '\0' || judgement.has(one.fault)));
      const auto report = play(one.key, one.key);
      for (const auto ledger : scoring::all_ledgers) {
        CHECK(report.earned(ledger) == report.possible(ledger));
      }
      CHECK(report.possible(Ledger::Interpretation) >= 22);
      CHECK_FALSE(report.safety_stop);
      for (const auto& mark : report.marks) {
        INFO(mark.item);
        CHECK((mark.possible == 0 || mark.reason.empty()));
      }
    }
  }
}

TEST_CASE("The slips students make at the counter cost what they should, each with its reason") {
  for (const Meant& one : meant) {
    DYNAMIC_SECTION(one.key) {
      const auto report = play(one.key, one.key + std::string(".flawed"));
      CHECK(report.safety_stop == one.stop);
      CHECK(report.earned(Ledger::Interpretation) == one.interpretation);
      CHECK(report.earned(Ledger::Arithmetic) == one.arithmetic);
      for (const auto& mark : report.marks) {
        INFO(mark.item);
        CHECK((mark.earned == mark.possible || !mark.reason.empty()));
      }
    }
  }
}

TEST_CASE("Every case with a delivery is played here or among the thirty") {
  const auto thirty = generator::pattern_keys(generator::patterns_folder(assets::folder()));
  for (const auto& file : std::filesystem::directory_iterator(test::case_folder)) {
    const auto key = file.path().stem().string();
    const bool of_pattern = std::find(thirty.begin(), thirty.end(), key) != thirty.end();
    if (file.path().extension() != ".toml" || of_pattern || !test::load_case(key).collection) {
      continue;
    }
    INFO(key);
    CHECK(std::any_of(std::begin(meant), std::end(meant), [&](const Meant& one) { return key == one.key; }));
  }
}

TEST_CASE(
    "To take in an unlabelled specimen ends the sitting, to refuse what cannot be had again earns nothing") {
  const auto mark = [](const scoring::Report& report, const std::string& item) {
    const auto found = std::find_if(report.marks.begin(), report.marks.end(),
                                    [&](const auto& one) { return one.item == item; });
    REQUIRE(found != report.marks.end());
    return *found;
  };
  const auto taken = play("reception_unlabelled", "reception_unlabelled.flawed");
  CHECK(mark(taken, "safety.identity").earned == 0);
  CHECK(mark(taken, "safety.identity").reason.find("nobody can say whose it is") != std::string::npos);
  const auto lost = play("reception_catheter_late", "reception_catheter_late.flawed");
  CHECK(mark(lost, "reception").earned == 0);
  CHECK(mark(lost, "reception").reason.find("lost for good") != std::string::npos);
}
