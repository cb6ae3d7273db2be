#include "engine/scoring/slips.hpp"

#include <cmath>
#include <fmt/format.h>

namespace matula::scoring {
namespace {

constexpr double division = 0.001; // One division of a urinometer's scale.

void add_slip(Step& step, double correction, std::string words) {
  step.slips.push_back({correction, std::move(words)});
}

Step zero_step(const GravityBasis& b, std::optional<double> entered) {
  Step step{"zero", -b.zero_error, {{-b.zero_error, -b.zero_error}}, {}, entered};
  add_slip(step, 0, "the float's zero error was left out");
  add_slip(step, b.zero_error, "the sign was turned round: a zero error is subtracted");
  add_slip(step, -10 * b.zero_error, "the zero error was taken ten times too large");
  return step;
}

Step temperature_step(const GravityBasis& b, std::optional<double> entered) {
  const double degrees = b.temperature_c - b.calibration_c;
  const double rule = division * degrees / b.per_degrees_c;
  const double whole_steps = division * std::trunc(degrees / b.per_degrees_c);
  const double physical = b.physical_temperature_correction;
  Step step{
      "temperature", rule, {{rule, rule}, {whole_steps, whole_steps}, {physical, physical}}, {}, entered};
  add_slip(step, 0, "the temperature correction was left out");
  add_slip(step, -rule,
           "the sign was turned round: warm urine is lighter, so the correction is added above the float's "
           "temperature "
           "and subtracted below it");
  add_slip(step, division * degrees,
           fmt::format("0.001 was taken for every degree instead of every {:g} degrees", b.per_degrees_c));
  add_slip(step, 10 * rule, "the correction is ten times too large");
  add_slip(step, rule / 10, "the correction is ten times too small");
  add_slip(
      step, division * b.temperature_c / b.per_degrees_c,
      fmt::format("the whole temperature was counted instead of the degrees above {:g} °C", b.calibration_c));
  return step;
}

void add_solute_slips(Step& step, double g_dl, double rule, double other_rule, const char* solute,
                      const char* other) {
  add_slip(step, 0, fmt::format("the correction for {} was left out", solute));
  add_slip(step, g_dl * rule,
           fmt::format("the sign was turned round: what {} adds to the weight is taken off", solute));
  add_slip(
      step, -g_dl * other_rule,
      fmt::format("{:g} for each g/dL is the figure for {}; {} takes {:g}", other_rule, other, solute, rule));
  add_slip(step, -10 * g_dl * rule, "the correction is ten times too large; check g/dL against g/L");
  add_slip(step, -g_dl * rule / 10, "the correction is ten times too small; check g/dL against g/L");
}

struct Solute {
  const char* name;
  const char* other;
  const std::vector<Span>& g_dl;
  double rule;
  double other_rule;
  double physical;
};

Step solute_step(const char* key, const Solute& solute, std::optional<double> entered) {
  Step step{key, 0, {}, {}, entered};
  for (const auto& span : solute.g_dl) {
    step.accepted.push_back({-span.high * solute.rule, -span.low * solute.rule});
    step.accepted.push_back({-span.high * solute.physical, -span.low * solute.physical});
  }
  if (step.accepted.empty()) {
    step.accepted.push_back({0, 0});
    return step;
  }
  const auto& known = solute.g_dl.front();
  const double g_dl = 0.5 * (known.low + known.high);
  step.expected = -g_dl * solute.rule;
  add_solute_slips(step, g_dl, solute.rule, solute.other_rule, solute.name, solute.other);
  return step;
}

} // namespace

std::vector<Step> gravity_steps(const GravityBasis& b, const GravityLines& lines) {
  const Solute protein{"protein",      "glucose",      b.protein_g_dl,
                       b.protein_rule, b.glucose_rule, b.protein_physical};
  const Solute glucose{"glucose",      "protein",      b.glucose_g_dl,
                       b.glucose_rule, b.protein_rule, b.glucose_physical};
  std::vector<Step> steps;
  steps.push_back(zero_step(b, lines.zero));
  steps.push_back(temperature_step(b, lines.temperature));
  steps.push_back(solute_step("protein", protein, lines.protein));
  steps.push_back(solute_step("glucose", glucose, lines.glucose));
  steps.push_back(Step{"corrected", 0, {{0, 0}}, {}, lines.corrected});
  return steps;
}

} // namespace matula::scoring
