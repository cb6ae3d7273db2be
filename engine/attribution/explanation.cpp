#include "engine/attribution/explanation.hpp"

#include "engine/assets/world.hpp"
#include "engine/attribution/tube.hpp"
#include "engine/scenario/scenario.hpp"

namespace matula::attribution {
namespace {

/// Plays the log once and keeps what came of each event.
std::vector<Heard> play(Sitting& sitting, const std::vector<sitting::Event>& log, sitting::Session& session) {
  std::vector<Heard> all;
  all.reserve(log.size());
  double now_s = 0;
  std::uint64_t counter = session.state().random_counter;
  int used = session.state().papers_used;
  sitting.replay = scoring::play_through(
      sitting.world, sitting.scenario, sitting.standards.rules, log, session,
      [&](const sitting::Event& event, const bench::Outcome& outcome) {
        const auto& state = session.state();
        Heard heard{event, outcome.done, std::max(now_s, event.time_s), session.time_s(), counter, used, ""};
        if (state.papers_used > used && !state.papers.empty()) {
          heard.new_paper = state.papers.back().piece.name;
        }
        now_s = heard.end_s;
        counter = state.random_counter;
        used = state.papers_used;
        all.push_back(std::move(heard));
      });
  return all;
}

} // namespace

std::vector<Explanation> explain(const assets::World& world, const scoring::Standards& standards,
                                 const scenario::Scenario& scenario, const std::vector<sitting::Event>& log,
                                 const scoring::Report& report) {
  sitting::Session session(world, scenario);
  Sitting sitting{world, standards, scenario, report, session.setup(), session.state(), {}, {}};
  sitting.heard = play(sitting, log, session);
  std::vector<Explanation> all;
  if (scenario.asked.specific_gravity) {
    all.push_back(explain_gravity(sitting));
  }
  for (const auto& test : standards.rules.tests) {
    if (scenario.asked.has(test.key) && test.result == procedure::Result::Word) {
      all.push_back(explain_tube(sitting, test));
    }
  }
  return all;
}

} // namespace matula::attribution
