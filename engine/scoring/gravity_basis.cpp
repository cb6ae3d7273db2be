#include "engine/scoring/gravity_basis.hpp"

#include "engine/assets/world.hpp"
#include "engine/scenario/scenario.hpp"
#include "engine/scoring/numeric.hpp"
#include "sim/matter/density.hpp"

#include <algorithm>

namespace matula::scoring {
namespace {

double total_g_dl(const specimen::Specimen& specimen, const std::vector<std::string>& keys) {
  double mg_dl = 0;
  for (const auto& [key, amount] : specimen.mg_per_dl) {
    mg_dl += std::find(keys.begin(), keys.end(), key) != keys.end() ? amount : 0;
  }
  return mg_dl / 1000;
}

/// What the learner's own grades stand for, then what was there.
std::vector<Span> solute_spans(const Case& marked, const std::string& what, double present_g_dl) {
  std::vector<Span> spans;
  for (const auto& test : marked.book.tests) {
    const auto grade = test.stands_for == what ? test.grade(marked.entry(test.item())) : std::nullopt;
    if (grade) {
      const auto& stands_for = test.grade_g_per_dl[static_cast<std::size_t>(*grade)];
      spans.push_back({stands_for.low, stands_for.high});
    }
  }
  spans.push_back({present_g_dl, present_g_dl});
  return spans;
}

double zero_error(const Case& marked) {
  if (const auto own = number_from_text(marked.entry("sg.zero"))) {
    return *own > 0.5 ? *own - 1 : *own;
  }
  // Never checked in water: that is charged to the procedure, not to the arithmetic again.
  const auto& water = marked.replay.watch.in_water;
  return water ? water->scale.reading_at_surface - 1 : 0;
}

double temperature(const Case& marked, double calibration_c) {
  if (const auto own = number_from_text(marked.entry("sg.temperature"))) {
    return *own;
  }
  const auto& seen = marked.replay.float_at_reading;
  return seen ? seen->liquid_c : calibration_c;
}

double relative_density(matter::Mixture liquid, double temperature_c, double reference_c,
                        double glass_expansion_per_k, const matter::Catalogue& catalogue) {
  liquid.temperature_c = temperature_c;
  return matter::density_kg_m3(liquid, catalogue) *
         (1 + glass_expansion_per_k * (temperature_c - reference_c)) /
         matter::water_density_kg_m3(reference_c);
}

} // namespace

double physical_temperature_correction(const FloatSeen& seen, const instrument::Urinometer& urinometer,
                                       const matter::Catalogue& catalogue) {
  const double at = urinometer.calibration_c;
  const double glass = urinometer.glass_expansion_per_k;
  return relative_density(seen.liquid, at, at, glass, catalogue) -
         relative_density(seen.liquid, seen.liquid_c, at, glass, catalogue);
}

GravityBasis gravity_basis(const Case& marked) {
  const auto& rules = marked.scenario.rules;
  const auto& seen = marked.replay.float_at_reading;
  GravityBasis basis;
  basis.zero_error = zero_error(marked);
  basis.calibration_c = rules.calibration_c;
  basis.temperature_c = temperature(marked, rules.calibration_c);
  basis.per_degrees_c = rules.per_degrees_c;
  if (seen) {
    auto urinometer = marked.world.urinometer;
    urinometer.calibration_c = rules.calibration_c;
    basis.physical_temperature_correction =
        physical_temperature_correction(*seen, urinometer, marked.world.catalogue);
  }
  const double share = seen ? seen->specimen_share : 1;
  const auto& gravity = marked.book.gravity;
  basis.protein_g_dl =
      solute_spans(marked, "protein", share * total_g_dl(marked.scenario.specimen, gravity.proteins));
  basis.glucose_g_dl =
      solute_spans(marked, "sugar", share * total_g_dl(marked.scenario.specimen, gravity.sugars));
  basis.protein_rule = rules.protein_per_g_dl;
  basis.glucose_rule = rules.glucose_per_g_dl;
  basis.protein_physical = gravity.protein_physical_per_g_dl;
  basis.glucose_physical = gravity.glucose_physical_per_g_dl;
  return basis;
}

GravityLines gravity_lines(const Case& marked) {
  const auto line = [&](const char* item) { return number_from_text(marked.entry(item)); };
  return {line("sg.step.zero"), line("sg.step.temperature"), line("sg.step.protein"), line("sg.step.glucose"),
          line("sg.corrected")};
}

std::optional<double> true_gravity(const Case& marked) {
  const auto& seen = marked.replay.float_at_reading;
  if (!seen) {
    return std::nullopt;
  }
  const double at = marked.scenario.rules.calibration_c;
  const auto& gravity = marked.book.gravity;
  return relative_density(seen->liquid, at, at, 0, marked.world.catalogue) -
         seen->specimen_share *
             (gravity.protein_physical_per_g_dl * total_g_dl(marked.scenario.specimen, gravity.proteins) +
              gravity.glucose_physical_per_g_dl * total_g_dl(marked.scenario.specimen, gravity.sugars));
}

} // namespace matula::scoring
