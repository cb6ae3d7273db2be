#pragma once

#include "engine/quality/controls.hpp"
#include "engine/quality/multirules.hpp"

#include <functional>

namespace matula::assets {
struct World;
}

namespace matula::quality {

/// Weeks of control readings with a bottle that goes off: assets/quality/exercises.toml.
struct Exercise {
  std::string key;
  std::string title;
  std::string story;
  std::string test;                  ///< Key of a procedure.
  std::string bottle;                ///< Reagent that ages.
  std::vector<std::string> controls; ///< Keys, two as a rule.
  int days = 30;                     ///< After the settling-in period.
  double bottle_days_per_day = 1;    ///< How fast the bottle ages: a warm window sill ages it faster.
  double reader_scatter = 0.2;       ///< Deviation of a reader, in grades.
  int seed = 1;
  std::string remedy; ///< What to do when the rules stop the test.
};

/// What a day's controls read, in grades with one decimal place: 0 negative, 1 trace, 2 for 1+.
struct Day {
  int day = 1;
  std::vector<double> readings; ///< By control.
  Run z;
  std::vector<Rule> broken;
};

struct Series {
  std::vector<Baseline> baselines; ///< By control, from the settling-in period.
  std::vector<Day> days;
  int stop_day = 0; ///< First day on which a rule that rejects is broken; 0: none.
};

/// Reading of a control by a bottle of an age in days, in grades: what the reference reader makes of the tube
/// done by the book.
using Reads = std::function<double(std::size_t control, double age_days)>;

/// Twenty settling-in values of a fresh bottle give mean and deviation; then day after day. Pure: chance
/// comes from the exercise's seed.
[[nodiscard]] Series make_series(const Exercise& exercise, const Reads& reads);

/// What the reference reader makes of a control done by the book with one bottle of an age, in grades. Throws
/// std::invalid_argument for a test that is not there.
[[nodiscard]] double control_reading(const Control& control, const std::string& test,
                                     const std::string& bottle, double age_days, const assets::World& world);

/// The bench does the test by the book at a few ages and the rest lies between them. Throws
/// std::invalid_argument when the exercise names a control or test that is not there.
[[nodiscard]] Reads bench_reads(const Exercise& exercise, const std::vector<Control>& controls,
                                const assets::World& world);

} // namespace matula::quality
