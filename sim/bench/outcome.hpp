#pragma once

#include <optional>
#include <string>
#include <vector>

namespace matula::bench {

/// What an instrument showed.
struct Reading {
  std::string instrument; ///< "refractometer" or "photometer".
  double value = 0;       ///< In the scale's own unit, rounded as its divisions allow.
  double spread = 0;      ///< Width of the line or flicker of the figure, in the same unit.
  bool off_scale = false; ///< Beyond its end: the value is only the end of the scale.
  std::string words;      ///< How it looked, for the person: "the line is blurred".
};

/// What an action let the person know.
struct Outcome {
  bool done = true;
  std::string refused_because;         ///< In words a learner can act on; empty when done.
  std::optional<double> thermometer_c; ///< To 0.5 °C, as the instrument is divided.
  std::optional<Reading> reading;      ///< Of an instrument.
  std::vector<std::string> odours;
  std::string caution; ///< Key of a caution to show now; empty for none.
};

} // namespace matula::bench
