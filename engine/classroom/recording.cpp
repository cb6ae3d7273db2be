#include "engine/classroom/recording.hpp"

#include "engine/assets/world.hpp"
#include "engine/classroom/charge.hpp"
#include "engine/classroom/line_words.hpp"

#include <algorithm>

namespace matula::classroom {
namespace {

constexpr std::size_t most_kept = 40; // Benches; one takes some hundred kilobytes. Chosen here.

Line line_of(const sitting::Event& event, const bench::Outcome& outcome, const Names& names) {
  Line line;
  line.words = in_words(event, names);
  line.answer = in_words(outcome, event);
  line.refused = !outcome.done;
  line.tick = is_tick(event);
  line.vessel = vessel_of(event);
  return line;
}

} // namespace

Recording make_recording(const assets::World& world, const scoring::Standards& standards,
                         const scenario::Scenario& scenario, const std::vector<sitting::Event>& events,
                         const scoring::Report& report) {
  Recording recording{scenario, Names(world, scenario, report), events, {}, {}, {}, 0};
  const auto rules = standards.rules.with(scenario.marking.rules);
  SafetyLines safety(rules);
  scoring::Watch watch;
  sitting::Session session(world, scenario);
  recording.kept.push_back({0, session});
  const std::size_t every = std::max<std::size_t>(1, events.size() / most_kept + 1);
  for (std::size_t i = 0; i < events.size(); ++i) {
    session.run_to(events[i].time_s);
    const double now_s = session.time_s();
    safety.look(i, session.state(), watch);
    watch.before(events[i], session.state(), session.setup(), world.catalogue);
    const auto outcome = session.take(events[i]);
    watch.after(events[i], session.state(), outcome, world.catalogue);
    safety.look(i + 1, session.state(), watch);
    recording.lines.push_back(line_of(events[i], outcome, recording.names));
    recording.lines.back().time_s = now_s;
    if ((i + 1) % every == 0) {
      recording.kept.push_back({i + 1, session});
    }
  }
  recording.end_s = session.time_s();
  charge_marks(recording, rules, report, safety);
  return recording;
}

} // namespace matula::classroom
