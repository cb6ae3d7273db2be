#pragma once

#include "engine/scoring/curve_watch.hpp"
#include "engine/scoring/facts.hpp"
#include "engine/scoring/tubes.hpp"
#include "engine/sitting/event.hpp"

#include <map>
#include <optional>
#include <set>
#include <string>
#include <vector>

namespace matula::scoring {

/// How hot a vessel had been when something was added to it.
struct HeatAtAddition {
  std::string what;
  double time_s = 0;
  double seconds_above_90c = 0;
  double heated_s = 0;
};

/// The float as it last stood in a liquid.
struct FloatSeen {
  bench::VesselName vessel;
  instrument::ScaleView scale;
  instrument::Float state;
  bool wiped = true;
  bool spun = true;
  double liquid_c = 20;
  double liquid_ml = 0;
  double specimen_share = 0;
  matter::Mixture liquid;
};

/// A figure an instrument showed.
struct FigureSeen {
  bench::VesselName vessel;
  double value = 0;
};

/// What the log shows beyond the traces that vessels keep: who looked how, and the order of things. Filled
/// event by event during replay.
struct Watch {
  std::map<bench::VesselName, std::set<appearance::Card>> cards;
  std::map<bench::VesselName, double> eye_mm;
  std::map<bench::VesselName, std::vector<HeatAtAddition>> additions;
  std::map<bench::VesselName, double> thermometer_c; ///< Last reading of the thermometer, by vessel.
  std::map<std::string, FigureSeen> shown;           ///< Last figure of each instrument, by its name.
  PhotometerBook photometer;                         ///< Every tube that stood in the photometer.
  std::optional<FloatSeen> in_water;
  std::optional<FloatSeen> in_specimen;
  bool float_wiped = true;
  bool float_spun = true;
  bool smelled = false;
  bool specimen_mixed = false;
  std::optional<bool> mixed_before_first_pour;
  int strong_reagents = 0;
  int strong_reagents_without_goggles = 0;
  bool something_handled = false;
  bool flame_lit = false;
  // Of vessels that have been emptied since.
  double pointed_at_person_s = 0;
  double held_still_s = 0;

  /// Call when the bench has run to the event's time, before it happens.
  void before(const sitting::Event& event, const bench::State& state, const bench::Setup& setup,
              const matter::Catalogue& catalogue);
  /// Call with what came of it.
  void after(const sitting::Event& event, const bench::State& state, const bench::Outcome& outcome,
             const matter::Catalogue& catalogue);
};

} // namespace matula::scoring
