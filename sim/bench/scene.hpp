#pragma once

#include "sim/appearance/appearance.hpp"
#include "sim/bench/action.hpp"
#include "sim/instrument/urinometer.hpp"

#include <optional>
#include <string>
#include <vector>

namespace matula::bench {

/// One vessel as there is to see it.
struct SeenVessel {
  VesselName name;
  std::string shape;
  Place place = Place::Rack;
  double flame_height = 0.85;
  appearance::Appearance looks; ///< Against the card and lamp it was asked for.
};

struct SeenFloat {
  VesselName vessel;
  instrument::Urinometer urinometer_without_zero_error; ///< Drawn geometry only; zero_error is always 0 here.
  instrument::Float state;
  instrument::ScaleView scale;
};

/// Everything a person at the bench could see, and nothing else.
struct Scene {
  double time_s = 0;
  std::vector<SeenVessel> vessels;
  bool flame_on = false;
  bool hood = false;     ///< Working under the fume hood.
  double spilled_ml = 0; ///< Lying on the bench.
  double bath_c = 22;    ///< The bath has a thermometer in it.
  double room_c = 22;    ///< The wall thermometer.
  std::optional<SeenFloat> floating;
  std::vector<std::string> shelf; ///< Reagent keys.
};

struct State;
struct Setup;

/// What there is to see on the bench under one card and lamp: no composition, no seed, no zero error.
[[nodiscard]] Scene make_scene(const State& state, const Setup& setup, const appearance::View& view);

} // namespace matula::bench
