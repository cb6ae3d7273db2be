#include "engine/practice/sum.hpp"

#include "engine/practice/draws.hpp"
#include "engine/practice/store.hpp"
#include "engine/scenario/scenario.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace matula::practice {

namespace {

double one_of(const std::vector<double>& values, const Draws& draws, const char* name) {
  return values[draws.pick(name, values.size())];
}

} // namespace

Sum make_sum(const Store& store, const Unknown& unknown) {
  const auto& rules = store.rules.sums;
  const auto steps = split(unknown.what, '+');
  const auto asks = [&](const char* step) { return std::count(steps.begin(), steps.end(), step) > 0; };
  for (const std::string& step : steps) {
    if (std::count(sum_steps.begin(), sum_steps.end(), step) == 0) {
      throw std::invalid_argument("no step of a calculation: " + step);
    }
  }
  const Draws draws(unknown.seed);
  const scenario::LaboratoryRules written;
  constexpr double division = 0.001;
  Sum sum;
  sum.reading =
      std::round(draws.between("reading", rules.readings.low, rules.readings.high) / division) * division;
  auto& basis = sum.basis;
  basis.calibration_c = one_of(rules.calibrations_c, draws, "calibration");
  basis.per_degrees_c = written.per_degrees_c;
  basis.protein_rule = basis.protein_physical = written.protein_per_g_dl;
  basis.glucose_rule = basis.glucose_physical = written.glucose_per_g_dl;
  basis.zero_error = asks("zero") ? one_of(rules.zero_errors, draws, "zero") : 0;
  const double degrees = std::round(draws.between("degrees", rules.degrees.low, rules.degrees.high));
  // Urine that comes to the bench colder than the float's temperature is the rarer case.
  const bool below = draws.even("below") < 0.4 && degrees < basis.calibration_c - 2;
  basis.temperature_c = basis.calibration_c + (!asks("temperature") ? 0 : below ? -degrees : degrees);
  basis.physical_temperature_correction =
      division * (basis.temperature_c - basis.calibration_c) / basis.per_degrees_c;
  sum.protein_g_dl = asks("protein") ? one_of(rules.protein_g_dl, draws, "protein") : 0;
  sum.glucose_g_dl = asks("glucose") ? one_of(rules.glucose_g_dl, draws, "glucose") : 0;
  basis.protein_g_dl = {{sum.protein_g_dl, sum.protein_g_dl}};
  basis.glucose_g_dl = {{sum.glucose_g_dl, sum.glucose_g_dl}};
  return sum;
}

std::array<double, 5> right_lines(const Sum& sum) {
  std::array<double, 5> lines{};
  double now = sum.reading;
  const auto steps = scoring::gravity_steps(sum.basis, {});
  for (std::size_t i = 0; i < lines.size(); ++i) {
    now += steps[i].expected;
    lines[i] = now;
  }
  return lines;
}

std::vector<std::string> all_step_sets() {
  std::vector<std::string> sets;
  for (unsigned bits = 1; bits < 1U << sum_steps.size(); ++bits) {
    std::string set;
    for (std::size_t i = 0; i < sum_steps.size(); ++i) {
      if ((bits >> i & 1U) != 0) {
        set += (set.empty() ? "" : "+") + std::string(sum_steps[i]);
      }
    }
    sets.push_back(set);
  }
  return sets;
}

} // namespace matula::practice
