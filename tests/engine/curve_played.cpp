// The day's protein by turbidity, worked on the bench: by the book, with the slips students make, and one
// slip at a time.
#include "played_support.hpp"

#include "engine/sitting/session.hpp"
#include "engine/sitting/steps.hpp"

#include <cmath>
#include <cstdlib>
#include <fstream>
#include <functional>
#include <iostream>
#include <sstream>

using namespace matula;
using scoring::Ledger;
using test::standards;

namespace {

std::string text_of(const std::string& steps) {
  std::ifstream in(test::case_folder / "steps" / (steps + ".jsonl"));
  std::ostringstream all;
  all << in.rdbuf();
  return all.str();
}

void print(const scoring::Report& report) {
  if (std::getenv("MATULA_PRINT") == nullptr) {
    return;
  }
  for (const auto& mark : report.marks) {
    std::cout << mark.item << ' ' << mark.earned << '/' << mark.possible << " [" << mark.entered << "] ["
              << mark.expected << "] " << mark.reason << '\n';
  }
}

scoring::Report play(const std::string& text) {
  const auto log = sitting::parse_steps(text, "steps");
  if (!log) {
    FAIL(scenario::to_text(log.error()));
  }
  auto report = scoring::score(test::world(), standards(), test::load_case("day_protein"), *log);
  print(report);
  return report;
}

/// The sitting by the book with one piece of text put in another's place.
std::string spoiled(const std::string& found, const std::string& put) {
  std::string text = text_of("day_protein");
  const auto at = text.find(found);
  REQUIRE(at != std::string::npos);
  return text.replace(at, found.size(), put);
}

const scoring::Mark* mark_of(const scoring::Report& report, const std::string& item) {
  for (const auto& mark : report.marks) {
    if (mark.item == item) {
      return &mark;
    }
  }
  return nullptr;
}

bool lost(const scoring::Report& report, const std::string& item, const std::string& words) {
  const auto* mark = mark_of(report, item);
  INFO(item << ": " << (mark == nullptr ? "no such mark" : mark->reason));
  return mark != nullptr && mark->earned < mark->possible && mark->reason.find(words) != std::string::npos;
}

int lost_marks(const scoring::Report& report, Ledger ledger) {
  return report.possible(ledger) - report.earned(ledger);
}

} // namespace

TEST_CASE("By the book the day's protein earns every mark and comes out as what the urine holds") {
  const auto report = play(text_of("day_protein"));
  for (const auto& mark : report.marks) {
    INFO(mark.item << ": " << mark.reason);
    CHECK(mark.earned == mark.possible);
  }
  CHECK(report.possible(Ledger::Reading) == 20);
  // 340 mg/dL of albumin and 40 of globulin, which clouds less than the standards' albumin; the margin is
  // ours.
  const auto* value = mark_of(report, "turbidity.value");
  REQUIRE(value != nullptr);
  CHECK(std::stod(value->entered) == Approx(380).epsilon(0.10));
}

TEST_CASE("The flawed sitting loses marks where its faults are, each with its reason") {
  const auto report = play(text_of("day_protein.flawed"));
  CHECK(lost(report, "process.turbidity.blank", "No blank of the urine"));
  const auto* range = mark_of(report, "process.turbidity.range"); // said, though nothing is left to lose
  REQUIRE(range != nullptr);
  CHECK(range->reason.find("277 % of the highest standard") != std::string::npos);
  CHECK(lost(report, "process.turbidity.same_volumes", "share of acid"));
  CHECK(lost(report, "turbidity.blank", "No such tube"));
  CHECK(lost(report, "day.volume_ml", ""));
  CHECK(lost(report, "day.protein_g", "ten times too much"));
  CHECK(lost(report, "decision.beyond", ""));
  CHECK(mark_of(report, "turbidity.read")->earned ==
        mark_of(report, "turbidity.read")->possible); // own curve
  CHECK_FALSE(report.safety_stop);
}

TEST_CASE("One planted slip costs its own line and no other") {
  const auto whole = play(text_of("day_protein"));
  struct Slip {
    const char* item;
    std::function<std::string(double)> wrong;
    const char* words;
  };
  const auto times = [](double factor) {
    return [factor](double right) { return std::to_string(right * factor); };
  };
  for (const auto& [item, wrong, words] : {Slip{"turbidity.50", times(10), "The photometer showed"},
                                           Slip{"day.protein_g", times(10), "ten times too much"}}) {
    INFO(item);
    const auto* right = mark_of(whole, item);
    REQUIRE(right != nullptr);
    const std::string field = std::string(R"({"do":"record","item":")") + item + R"(","value":")";
    const auto report = play(spoiled(field + right->entered, field + wrong(std::stod(right->entered))));
    CHECK(lost(report, item, words));
  }
}

TEST_CASE("Work that spoils the curve is named") {
  // Acid short in one standard.
  CHECK(lost(play(spoiled(R"("tca_12_5","to":"tube-5","volume_ml":0.8)",
                          R"("tca_12_5","to":"tube-5","volume_ml":0.4)")),
             "process.turbidity.same_volumes", "share of acid"));
  // Read after two minutes.
  CHECK(
      lost(play(spoiled(R"({"wait":570})", R"({"wait":120})")), "process.turbidity.early", "still growing"));
  // Read after an hour.
  CHECK(lost(play(spoiled(R"({"wait":570})", R"({"wait":3600})")), "process.turbidity.late", "clump"));
  // Another colour of light for the specimen.
  CHECK(lost(play(spoiled(R"("tube-8","wavelength_nm":620)", R"("tube-8","wavelength_nm":450)")),
             "process.turbidity.wavelength", "blue light"));
  // Zero on the blank of the urine.
  CHECK(lost(play(spoiled(R"({"do":"photometer","vessel":"tube-2","wavelength_nm":620,"blank":true})",
                          R"({"do":"photometer","vessel":"tube-3","wavelength_nm":620,"blank":true})")),
             "process.turbidity.zero", "zero set on a tube with urine"));
}

TEST_CASE("Only the learner's own reading counts: nothing read, nothing earned") {
  std::string text = text_of("day_protein");
  std::string kept;
  std::istringstream lines(text);
  for (std::string line; std::getline(lines, line);) {
    kept += line.find("\"photometer\"") == std::string::npos ? line + "\n" : "";
  }
  const auto report = play(kept);
  CHECK(report.earned(Ledger::Reading) == 0);
  CHECK(lost(report, "process.turbidity", "was not done"));
  CHECK(lost_marks(report, Ledger::Process) > 0);
}
