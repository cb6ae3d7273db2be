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

/// One field of a test paper.
struct SeenPad {
  std::string key;
  std::string label;
  optics::Xyz colour;    ///< D65 XYZ, Y = 1 for the white card; the mean of spots and ground.
  int spots = 0;         ///< How many spots there are; 0 when it is even.
  double spot_cover = 0; ///< Share of the pad they cover.
  optics::Xyz spot;
  optics::Xyz ground;
};
struct SeenPaper {
  std::string name; ///< "strip-1"
  std::string kind;
  std::string label;
  double wet_for_s = 0; ///< Since it was dipped.
  bool blotted = false;
  std::vector<SeenPad> pads;
};
/// One row of a reference card.
struct SeenCardRow {
  std::string key;
  std::string label;
  std::string unit;
  double read_at_s = 60;
  std::vector<std::pair<std::string, optics::Xyz>> fields; ///< Words and colours, rising.
};
struct SeenCard {
  std::string kind;
  std::string label;
  std::vector<SeenCardRow> rows;
};

/// Everything a person at the bench could see, and nothing else.
struct Scene {
  double time_s = 0;
  std::vector<SeenVessel> vessels;
  bool flame_on = false;
  double bath_c = 22; ///< The bath has a thermometer in it.
  double room_c = 22; ///< The wall thermometer.
  std::optional<SeenFloat> floating;
  std::vector<std::string> shelf; ///< Reagent keys.
  std::vector<SeenPaper> papers;  ///< Lying on the bench, in the order they were used.
  std::vector<SeenCard> cards;    ///< Reference cards of the kinds of paper there are.
};

struct State;
struct Setup;

/// What there is to see on the bench under one card and lamp: no composition, no seed, no zero error.
[[nodiscard]] Scene make_scene(const State& state, const Setup& setup, const appearance::View& view);

} // namespace matula::bench
