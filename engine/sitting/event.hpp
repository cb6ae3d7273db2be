#pragma once

#include "sim/bench/action.hpp"

#include <string>
#include <variant>

namespace matula::sitting {

/// Something written on the worksheet. Items: "colour", "clarity", "odour", "sg.zero", "sg.temperature",
/// "sg.reading", "sg.step.zero", "sg.step.temperature", "sg.step.protein", "sg.step.glucose", "sg.corrected",
/// those of the procedures ("heat.grade", "refractometer.value"), of reception, "decision.KEY". A later entry
/// for the same item corrects the earlier one; both stay in the log.
struct Record {
  std::string item;
  std::string value;
};

/// The worksheet is handed in; nothing may follow.
struct Finish {};

/// One line of the log, at a bench time in seconds.
struct Event {
  double time_s = 0;
  std::variant<bench::Action, Record, Finish> what;
};

} // namespace matula::sitting
