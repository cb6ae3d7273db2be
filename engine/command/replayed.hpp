#pragma once

#include "engine/assets/world.hpp"
#include "engine/scenario/scenario.hpp"
#include "engine/scoring/standards.hpp"
#include "engine/sitting/session.hpp"

#include <memory>
#include <string>
#include <utility>
#include <vector>

namespace matula::command {

/// The world and what work is held against, read once for a verb.
struct Ground {
  std::unique_ptr<const assets::World> world;
  scoring::Standards standards;
};

/// An action the bench refused, and why.
struct Refusal {
  double time_s = 0; ///< On the bench.
  std::string because;
};

/// A scenario played through to the end of a log.
struct Played {
  sitting::Session session;
  std::vector<Refusal> refusals;
  appearance::View last_view; ///< Of the last look; white card by daylight when there was none.
  bench::VesselName last_looked_at;
  double last_eye_mm = 0;
};

[[nodiscard]] tl::expected<Ground, scenario::Problems> load_ground();

[[nodiscard]] Played play_log(const assets::World& world, const scenario::Scenario& scenario,
                              const std::vector<sitting::Event>& log);

/// The same, marked on the way: the log is played once.
[[nodiscard]] std::pair<Played, scoring::Report> play_and_mark(const Ground& ground,
                                                               const scenario::Scenario& scenario,
                                                               const std::vector<sitting::Event>& log);

} // namespace matula::command
