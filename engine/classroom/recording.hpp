#pragma once

#include "engine/classroom/line.hpp"
#include "engine/classroom/line_words.hpp"
#include "engine/scenario/scenario.hpp"
#include "engine/sitting/session.hpp"

#include <vector>

// Inside this room only: it holds the specimen's truth.

namespace matula::scoring {
struct Standards;
}

namespace matula::classroom {

/// A stored sitting replayed once by its log, with the bench kept at some of its lines, so that any line is
/// soon reached again.
struct Recording {
  /// The bench when so many lines had been taken.
  struct Kept {
    std::size_t done = 0;
    sitting::Session session;
  };

  scenario::Scenario scenario;
  Names names;
  std::vector<sitting::Event> events;
  std::vector<Line> lines;        ///< One for each event.
  std::vector<Kept> kept;         ///< The first before any line.
  std::vector<Charged> elsewhere; ///< Marks that stand at no line: nothing was written for them.
  double end_s = 0;               ///< Bench time after the last line.
};

/// Replays the log through sitting::Session, event by event, as the marks do. `world` must outlive the
/// recording.
[[nodiscard]] Recording make_recording(const assets::World& world, const scoring::Standards& standards,
                                       const scenario::Scenario& scenario,
                                       const std::vector<sitting::Event>& events,
                                       const scoring::Report& report);

} // namespace matula::classroom
