#pragma once

#include "engine/scoring/heard.hpp"
#include "engine/scoring/watch.hpp"
#include "engine/sitting/session.hpp"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace matula::assets {
struct World;
}
namespace matula::scenario {
struct Scenario;
}

namespace matula::scoring {

/// What stood on the bench when an item of the worksheet was last written.
struct Moment {
  double time_s = 0;
  std::string value;
  bench::VesselName vessel;                  ///< The tube or jar it is about; empty when there was none.
  std::optional<reading::GradeReading> tube; ///< Reference reading of that very tube, then.
  std::optional<double> figure;              ///< What the instrument of a test showed.
  std::string word;                          ///< Reference word for colour or clarity.
  std::vector<std::string> odours;           ///< What a nose found.
  std::optional<double> thermometer_c;       ///< What the thermometer had shown, or the liquid's temperature.
  Facts facts;
};

/// A sitting played through once, with everything the marks need.
struct Replay {
  std::map<std::string, Moment> written; ///< By item, as last written.
  std::map<std::string, Moment> tests;   ///< By test, at its grade or, when none was written, at the end.
  Watch watch;
  Facts gravity; ///< When the reading was written, or at the end.
  Facts safety;
  std::optional<FloatSeen> float_at_reading;
  bool specimen_poured = false;
};

/// What a replay does with vessels the log is done with. The marks are the same either way.
enum class Idle {
  Live_on,   ///< The bench stands afterwards as the learner left it.
  Laid_aside ///< Much quicker; the session is not to be used afterwards.
};

/// Plays the log in `session`, which must be fresh, and lets `heard` know what came of every event.
[[nodiscard]] Replay play_through(const assets::World& world, const scenario::Scenario& scenario,
                                  const Rulebook& book, const std::vector<sitting::Event>& log,
                                  sitting::Session& session, const Heard& heard, Idle idle = Idle::Live_on);

/// Reference reading of one vessel as it stands.
[[nodiscard]] reading::GradeReading read_vessel(const bench::State& state, const bench::Setup& setup,
                                                const reading::Thresholds& thresholds,
                                                const reading::Scale& scale, const bench::VesselName& vessel);

} // namespace matula::scoring
