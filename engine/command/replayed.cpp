#include "engine/command/replayed.hpp"

#include "sim/bench/bench.hpp"

namespace matula::command {
namespace {

void note(Played& played, const sitting::Event& event, const bench::Outcome& outcome) {
  if (!outcome.done) {
    played.refusals.push_back({played.session.time_s(), outcome.refused_because});
    return;
  }
  const auto* action = std::get_if<bench::Action>(&event.what);
  const auto* look = action != nullptr ? std::get_if<bench::Look>(action) : nullptr;
  if (look != nullptr) {
    played.last_view = look->view;
    played.last_looked_at = look->vessel;
    played.last_eye_mm = look->eye_mm;
  }
}

} // namespace

tl::expected<Ground, scenario::Problems> load_ground() {
  const auto folder = assets::folder();
  auto world = assets::load(folder);
  if (!world) {
    return tl::make_unexpected(world.error());
  }
  auto standards = scoring::load_standards(folder);
  if (!standards) {
    return tl::make_unexpected(standards.error());
  }
  return Ground{std::move(*world), std::move(*standards)};
}

Played play_log(const assets::World& world, const scenario::Scenario& scenario,
                const std::vector<sitting::Event>& log) {
  Played played{sitting::Session(world, scenario), {}, {}, "", 0};
  for (const auto& event : log) {
    note(played, event, played.session.take(event));
  }
  return played;
}

std::pair<Played, scoring::Report> play_and_mark(const Ground& ground, const scenario::Scenario& scenario,
                                                 const std::vector<sitting::Event>& log) {
  Played played{sitting::Session(*ground.world, scenario), {}, {}, "", 0};
  auto report = scoring::score(*ground.world, ground.standards, scenario, log, played.session,
                               [&played](const sitting::Event& event, const bench::Outcome& outcome) {
                                 note(played, event, outcome);
                               });
  return {std::move(played), std::move(report)};
}

} // namespace matula::command
