#include "engine/author/golden.hpp"

#include "engine/assets/world.hpp"
#include "engine/sitting/steps.hpp"

#include <fmt/format.h>

namespace matula::author {

namespace {

using Worked = scenario::Review::Worked;

/// What was lost in a ledger, so that the author sees what moved.
std::string lost_in(const scoring::Report& report, scoring::Ledger ledger) {
  std::string words;
  for (const auto& mark : report.marks) {
    if (mark.ledger == ledger && mark.earned < mark.possible) {
      words += fmt::format("\n    {}: {} of {}: {}", mark.label, mark.earned, mark.possible, mark.reason);
    }
  }
  return words;
}

void compare(const Worked& worked, const scoring::Report& report, std::vector<std::string>& differences) {
  for (const auto ledger : scoring::all_ledgers) {
    const std::string name = scoring::to_word(ledger);
    const auto wanted = worked.marks.find(name);
    const int earned = report.earned(ledger);
    if (wanted != worked.marks.end() && wanted->second != earned) {
      differences.push_back(fmt::format("{}: {} earned {} marks, {} stand in [review]{}", worked.steps, name,
                                        earned, wanted->second, lost_in(report, ledger)));
    }
  }
  if (worked.passed && *worked.passed != report.standing.passed) {
    differences.push_back(fmt::format("{}: the sitting is {}, [review] says it is {}", worked.steps,
                                      report.standing.passed ? "passed" : "not passed",
                                      *worked.passed ? "passed" : "not passed"));
  }
}

} // namespace

std::vector<std::string> differs_from_worked(const Shelf& shelf, const scenario::Scenario& scenario,
                                             const scenario::Review& review) {
  std::vector<std::string> differences;
  for (const auto& worked : review.worked) {
    const auto file = std::filesystem::path(scenario.file).parent_path() / worked.steps;
    const auto steps = sitting::read_steps(file);
    if (!steps) {
      differences.push_back(
          fmt::format("{}: cannot be read:\n{}", worked.steps, scenario::to_text(steps.error())));
      continue;
    }
    compare(worked, scoring::score(*shelf.world, *shelf.standards, scenario, *steps), differences);
  }
  return differences;
}

} // namespace matula::author
