#include "engine/author/worth.hpp"

#include "engine/scoring/prepared.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace matula::author {

namespace {

/// Gathers what of a case's weights does not add up.
class Weigher {
public:
  explicit Weigher(const scenario::Scenario& scenario) : scenario_(scenario) {}

  std::vector<Advice> all() {
    const auto& marking = scenario_.marking;
    const scenario::Marking usual;
    const bool graded = !scenario_.asked.procedures.empty();
    const bool gravity = scenario_.asked.specific_gravity;
    weight("each_grade", marking.grade_weight, usual.grade_weight, graded);
    weight("each_look", marking.look_weight, usual.look_weight, scenario_.asked.look || gravity);
    weight("specific_gravity", marking.gravity_weight, usual.gravity_weight, gravity);
    weight("procedure", marking.process_weight, usual.process_weight, graded || gravity);
    questions();
    return std::move(advice_);
  }

private:
  void say(const char* kind, std::string words) { advice_.push_back({kind, std::move(words)}); }

  /// A weight somebody wrote for what is not asked, or 0 for what is.
  void weight(const char* name, int weight, int usual, bool asked) {
    if (asked && weight == 0) {
      say("weights",
          fmt::format("[weights] {} is 0, and it is asked for: no mark hangs on that work.", name));
    }
    if (!asked && weight != usual) {
      say("weights", fmt::format("[weights] {} is {}, and nothing of the kind is asked for.", name, weight));
    }
  }

  void questions() {
    const auto& marking = scenario_.marking;
    const int tests = static_cast<int>(scenario_.asked.procedures.size());
    int decided = 0;
    for (const auto& decision : scenario_.decisions) {
      decided += decision.weight;
    }
    if (tests > 0 &&
        decided > tests * marking.grade_weight + 2 * marking.process_weight + 3 * marking.gravity_weight) {
      say("weights",
          fmt::format("The questions are worth {} marks, more than all the work at the bench: a guess "
                      "would carry the case.",
                      decided));
    }
    for (const auto& decision : scenario_.decisions) {
      if (decision.weight == 0) {
        say("decision", fmt::format("The question '{}' has weight 0: no mark hangs on it.", decision.key));
      }
    }
  }

  const scenario::Scenario& scenario_;
  std::vector<Advice> advice_;
};

} // namespace

std::vector<Advice> advise_on_weights(const scenario::Scenario& scenario) {
  return Weigher(scenario).all();
}

std::vector<LedgerWorth> worth_of(const Shelf& shelf, const scenario::Scenario& scenario,
                                  const Preview& previewed) {
  const scoring::Prepared untouched{scenario, previewed.setup(), previewed.begun(), {}};
  const auto report = scoring::score(*shelf.world, *shelf.standards, untouched, {});
  std::vector<LedgerWorth> worth;
  for (const auto ledger : scoring::all_ledgers) {
    if (ledger == scoring::Ledger::Safety) {
      continue;
    }
    LedgerWorth one{scoring::to_word(ledger), report.possible(ledger), {}};
    for (const auto& mark : report.marks) {
      if (mark.ledger == ledger && mark.possible > 0) {
        one.parts.emplace_back(mark.label, mark.possible);
      }
    }
    worth.push_back(std::move(one));
  }
  return worth;
}

} // namespace matula::author
