#pragma once

#include "engine/attribution/work.hpp"
#include "engine/procedure/recipe.hpp"

#include <cstddef>
#include <string>
#include <vector>

namespace matula::attribution {

/// One thing put right in a learner's work. Changes touch different sides of different steps, so any set of
/// them can be made together, in any order.
struct Change {
  enum class Kind {
    Drop,      ///< Leaves the steps out.
    Scale,     ///< Multiplies the volumes (mL, drops) or seconds of the steps by `value`.
    Gently,    ///< Pours them gently, or not.
    Wait,      ///< Waits `value` seconds before the step `at`; past the last one: before the reading.
    Replace,   ///< Does `recipe` in place of the steps; what else went on meanwhile happens at once.
    Insert,    ///< Does `recipe` before the step `at`, after its wait, or before it when `first`.
    RoomWarm,  ///< Lets `vessel` come to the temperature of the room before the step `at`.
    Undiluted, ///< Takes the steps' liquid from the specimen's own cup.
    Bottle,    ///< Dispenses from the bottle `vessel`, `value` times the volume.
    Wiped,     ///< Lowers the float wiped.
  };
  Kind kind = Kind::Drop;
  std::vector<std::size_t> steps;
  std::size_t at = 0;
  double value = 0;
  bool flag = false;
  bool first = false;
  std::size_t order = 0; ///< Of several inserted at one place.
  procedure::RecipeStep recipe;
  std::string vessel;
};

/// Something that was not as the method has it, and what would put it right.
struct Deviation {
  std::string key;                ///< "volume.specimen", "heat.1", "mix.2", "time"
  std::string words;              ///< "heated 40 s instead of 2 min"
  std::vector<std::string> facts; ///< Names under which the rules measure it.
  std::string rule;               ///< Key of the rule it broke; empty when within the method.
  std::vector<Change> changes;
};

/// What stood on the bench before each step, and at the reading.
struct Trail {
  struct Point {
    double time_s = 0;   ///< When the step began (its wait is over), and the end of the one before.
    double since_s = 0;  ///< When the step before was over.
    double boiled_s = 0; ///< Of the vessel the step is about.
    double flamed_s = 0;
    double bathed_s = 0;
    double bath_c = 0;
    double specimen_c = 0;
  };
  std::vector<Point> points; ///< One more than the steps.
};

/// A bench before the first action, made once: a specimen that has stood has lived through it already.
struct Bench {
  const bench::Setup* setup = nullptr;
  bench::State fresh;
};

/// Plays the work on a fresh bench with the deviations `right` put right. Fills `trail` where there is one.
[[nodiscard]] bench::State replay(const Bench& bench, const Work& work,
                                  const std::vector<const Deviation*>& right, Trail* trail = nullptr);

} // namespace matula::attribution
