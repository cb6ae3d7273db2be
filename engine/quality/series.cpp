#include "engine/quality/series.hpp"

#include "engine/assets/world.hpp"
#include "engine/procedure/procedure.hpp"
#include "engine/scenario/scenario.hpp"
#include "engine/scoring/by_the_book.hpp"
#include "engine/scoring/moments.hpp"
#include "engine/sitting/setup.hpp"
#include "sim/optics/random.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace matula::quality {

namespace {

constexpr int settling_days = 20; // at least twenty values: common practice
constexpr std::size_t ages = 7;   // done on the bench; the rest is interpolated
constexpr double decimals = 0.1;  // of a grade: as fine as a reader can say

/// Normal deviate: twelve uniform numbers added up.
double scatter(int seed, std::size_t control, int day) {
  optics::Stream stream(optics::hash(static_cast<std::uint64_t>(seed)) ^
                        optics::hash(static_cast<std::uint64_t>(day) * 64 + control));
  constexpr int uniforms = 12;
  double sum = -uniforms / 2.0;
  for (int i = 0; i < uniforms; ++i) {
    sum += stream.next();
  }
  return sum;
}

double as_read(double true_reading, double deviation, int seed, std::size_t control, int day) {
  const double read = true_reading + deviation * scatter(seed, control, day);
  return std::round(std::max(0.0, read) / decimals) * decimals;
}

} // namespace

Series make_series(const Exercise& exercise, const Reads& reads) {
  Series series;
  const std::size_t count = exercise.controls.size();
  for (std::size_t control = 0; control < count; ++control) {
    std::vector<double> settled;
    for (int day = -settling_days; day < 0; ++day) {
      settled.push_back(as_read(reads(control, 0), exercise.reader_scatter, exercise.seed, control, day));
    }
    series.baselines.push_back(baseline(settled));
  }
  std::vector<Run> runs;
  for (int number = 1; number <= exercise.days; ++number) {
    Day day;
    day.day = number;
    for (std::size_t control = 0; control < count; ++control) {
      const double age_days = exercise.bottle_days_per_day * number;
      const double read =
          as_read(reads(control, age_days), exercise.reader_scatter, exercise.seed, control, number);
      day.readings.push_back(read);
      day.z.push_back((read - series.baselines[control].mean) / series.baselines[control].deviation);
    }
    runs.push_back(day.z);
    day.broken = broken_rules(runs);
    const bool stops = std::any_of(day.broken.begin(), day.broken.end(), rejects);
    series.stop_day = stops && series.stop_day == 0 ? number : series.stop_day;
    series.days.push_back(std::move(day));
  }
  return series;
}

double control_reading(const Control& control, const std::string& test, const std::string& bottle,
                       double age_days, const assets::World& world) {
  const procedure::Procedure* procedure = procedure::find_shipped(test);
  if (procedure == nullptr) {
    throw std::invalid_argument("a control is to be read by the test '" + test + "', which has no procedure");
  }
  scenario::Scenario scenario;
  scenario.key = "control";
  scenario.specimen = control.specimen;
  scenario.room_c = control.specimen.temperature_c;
  for (const auto& reagent : world.catalogue.reagents) {
    scenario.reagents_out.push_back(reagent.key);
  }
  scenario.bottle_age_days[bottle] = age_days;
  bench::Setup setup = sitting::make_setup(world, scenario);
  setup.tube_count = 1;
  const scoring::BookTube tube = scoring::do_by_the_book(setup, procedure->recipe);
  return scoring::read_vessel(tube.state, setup, world.thresholds, procedure->scale, tube.vessel).intensity;
}

Reads bench_reads(const Exercise& exercise, const std::vector<Control>& controls,
                  const assets::World& world) {
  const double oldest_days = exercise.bottle_days_per_day * exercise.days;
  std::vector<std::vector<double>> at;
  for (const std::string& key : exercise.controls) {
    const Control* control = find_control(controls, key);
    if (control == nullptr) {
      throw std::invalid_argument("exercise " + exercise.key + " asks for the control '" + key +
                                  "', which is not there");
    }
    std::vector<double> row;
    for (std::size_t i = 0; i < ages; ++i) {
      const double age_days = oldest_days * static_cast<double>(i) / (ages - 1);
      row.push_back(control_reading(*control, exercise.test, exercise.bottle, age_days, world));
    }
    at.push_back(std::move(row));
  }
  return [at, oldest_days](std::size_t control, double age_days) {
    const double place = std::clamp(age_days / oldest_days, 0.0, 1.0) * (ages - 1);
    const std::size_t below = std::min(static_cast<std::size_t>(place), ages - 2);
    const double share = place - static_cast<double>(below);
    return at[control][below] * (1 - share) + at[control][below + 1] * share;
  };
}

} // namespace matula::quality
