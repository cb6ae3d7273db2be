// Every shipped case, worked by the book: it plays, shows what it is meant to show, and earns its marks.
#include "played_support.hpp"

#include "engine/sitting/session.hpp"
#include "engine/sitting/steps.hpp"
#include "sim/bench/bench.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <iostream>

using namespace matula;
using test::standards;

namespace {

struct Intended {
  const char* key;
  const char* heat;
  const char* ssa;
  const char* benedict;
};

// What the case is for: the grades a careful reader finds.
constexpr Intended intended[] = {
    {"alkaline", "negative", "negative", "negative"},
    {"blackens", "negative", "negative", "1+"},
    {"concentrated", "1+", "1+", "negative"},
    {"contrast", "negative", "1+", "negative"},
    {"dilute", "negative", "negative", "negative"},
    {"faint", "trace", "trace", "trace"},
    {"first_case", "2+", "2+", "negative"},
    {"from_the_refrigerator", "negative", "negative", "negative"},
    {"half_sugar", "3+", "3+", "1+"},
    {"healthy_morning", "negative", "negative", "negative"},
    {"heavy_protein", "4+", "4+", "negative"},
    {"jaundice", "negative", "negative", "negative"},
    {"light_chains", "trace", "3+", "negative"},
    {"milk_sugar", "negative", "negative", "1+"},
    {"nephritis", "2+", "1+", "negative"},
    {"newborn", "1+", "1+", "2+"},
    {"orange_tube", "negative", "negative", "3+"},
    {"sweet_water", "negative", "negative", "4+"},
    {"vitamins", "negative", "negative", "trace"},
};

using test::case_folder;
using test::load_case;
using test::world;

std::filesystem::path steps_of(const std::string& key) {
  return key == "first_case" ? case_folder / "first_case.steps.jsonl"
                             : case_folder / "steps" / (key + ".jsonl");
}

std::vector<sitting::Event> load_steps(const std::string& key) {
  const auto read = sitting::read_steps(steps_of(key));
  if (!read) {
    FAIL(scenario::to_text(read.error()));
  }
  return *read;
}

void print(const std::string& key, const scoring::Report& report) {
  if (std::getenv("MATULA_PRINT") == nullptr) {
    return;
  }
  std::cout << "== " << key << '\n';
  for (const auto ledger : scoring::all_ledgers) {
    std::cout << "   " << scoring::to_word(ledger) << ' ' << report.earned(ledger) << '/'
              << report.possible(ledger) << '\n';
  }
  for (const auto& tube : report.tubes) {
    std::cout << "   @" << tube.test << '|' << tube.learner_tube_word << '|' << tube.reference_word << '\n';
  }
  for (const auto& mark : report.marks) {
    std::cout << (mark.earned < mark.possible ? "   - " : "     ") << mark.item << '|' << mark.entered << '|'
              << mark.expected << '|' << mark.reason << '\n';
  }
}

/// No step of work by the book may be refused.
std::string refusal(const scenario::Scenario& scenario, const std::vector<sitting::Event>& log) {
  sitting::Session session(world(), scenario);
  for (const auto& event : log) {
    const auto outcome = session.take(event);
    if (!outcome.done) {
      return outcome.refused_because;
    }
  }
  return "";
}

bool nearly_all(const scoring::Report& report, scoring::Ledger ledger) {
  return report.earned(ledger) * 10 >= report.possible(ledger) * 9;
}

} // namespace

TEST_CASE("Every case worked by the book shows what it is meant to and earns its marks") {
  const char* only = std::getenv("MATULA_CASE");
  for (const auto& meant : intended) {
    const std::string key = meant.key;
    if (only != nullptr && key != only) {
      continue;
    }
    DYNAMIC_SECTION(key) {
      const auto scenario = load_case(key);
      const auto log = load_steps(key);
      const auto report = scoring::score(world(), standards(), scenario, log);
      print(key, report);
      CHECK(refusal(scenario, log).empty());
      const std::map<std::string, std::string> words{
          {"heat", meant.heat}, {"ssa", meant.ssa}, {"benedict", meant.benedict}};
      REQUIRE(report.tubes.size() == words.size());
      for (const auto& tube : report.tubes) {
        INFO(tube.test);
        CHECK(tube.reference_word == words.at(tube.test));
        CHECK(tube.learner_tube_word == words.at(tube.test));
      }
      CHECK(nearly_all(report, scoring::Ledger::Reading));
      CHECK(nearly_all(report, scoring::Ledger::Arithmetic));
      CHECK(nearly_all(report, scoring::Ledger::Process));
      using scoring::Ledger;
      CHECK(report.earned(Ledger::Interpretation) == report.possible(Ledger::Interpretation));
      CHECK(report.earned(Ledger::Safety) == report.possible(Ledger::Safety));
      CHECK_FALSE(report.safety_stop);
    }
  }
}

TEST_CASE("Every shipped case has its steps and its intended grades") {
  for (const auto& file : std::filesystem::directory_iterator(case_folder)) {
    if (file.path().extension() != ".toml") {
      continue;
    }
    const auto key = file.path().stem().string();
    INFO(key);
    if (std::filesystem::exists(assets::folder() / "patterns" / (key + ".toml"))) {
      continue; // the thirty cases: thirty_played.cpp
    }
    if (load_case(key).collection) {
      continue; // Played in reception_played.cpp.
    }
    CHECK(std::filesystem::exists(steps_of(key)));
    CHECK(std::any_of(std::begin(intended), std::end(intended),
                      [&](const Intended& meant) { return key == meant.key; }));
  }
}

TEST_CASE("The rule on the wall and the physics of expansion both earn the temperature line, a wrong sign "
          "does not") {
  const std::string key =
      "from_the_refrigerator"; // A float made for 15 C in urine at 28 C: rule 0.004, physics 0.003.
  const auto scenario = load_case(key);
  const auto arithmetic = [&](const std::string& after_temperature) {
    auto log = load_steps(key);
    for (auto& event : log) {
      auto* record = std::get_if<sitting::Record>(&event.what);
      if (record != nullptr && record->item.rfind("sg.step.", 0) == 0 && record->item != "sg.step.zero") {
        record->value = after_temperature;
      }
      if (record != nullptr && record->item == "sg.corrected") {
        record->value = after_temperature;
      }
    }
    const auto report = scoring::score(world(), standards(), scenario, log);
    return report.possible(scoring::Ledger::Arithmetic) - report.earned(scoring::Ledger::Arithmetic);
  };
  CHECK(arithmetic("1.024") == 0);
  CHECK(arithmetic("1.023") == 0);
  CHECK(arithmetic("1.016") > 0);
}
