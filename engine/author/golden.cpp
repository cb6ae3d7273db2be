#include "engine/author/golden.hpp"

#include "engine/assets/world.hpp"
#include "engine/sitting/session.hpp"
#include "engine/sitting/steps.hpp"
#include "sim/bench/bench.hpp"

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
      differences.push_back(fmt::format("{}: {} earned {} of {} marks, {} stand in [review]{}", worked.steps,
                                        name, earned, report.possible(ledger), wanted->second,
                                        lost_in(report, ledger)));
    }
  }
  if (worked.passed && *worked.passed != report.standing.passed) {
    differences.push_back(fmt::format("{}: the sitting is {}, [review] says it is {}", worked.steps,
                                      report.standing.passed ? "passed" : "not passed",
                                      *worked.passed ? "passed" : "not passed"));
  }
}

/// A step the bench did not do: it explains what came out differently after it.
struct Refusal {
  std::size_t step = 0; ///< From 1, remarks not counted.
  double time_s = 0;    ///< On the bench.
  std::string because;
};

std::string say(const std::vector<Refusal>& refusals) {
  std::string words;
  for (const auto& one : refusals) {
    words += fmt::format("\n    step {}, at {:.0f} s on the bench, was refused: {}", one.step, one.time_s,
                         one.because);
  }
  return words;
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
    sitting::Session session(*shelf.world, scenario);
    std::vector<Refusal> refusals;
    std::size_t step = 0;
    const auto report =
        scoring::score(*shelf.world, *shelf.standards, scenario, *steps, session,
                       [&](const sitting::Event&, const bench::Outcome& outcome) {
                         ++step;
                         if (!outcome.done) {
                           refusals.push_back({step, session.time_s(), outcome.refused_because});
                         }
                       });
    const std::size_t before = differences.size();
    compare(worked, report, differences);
    if (differences.size() > before) {
      differences[before] += say(refusals);
    }
  }
  return differences;
}

} // namespace matula::author
