#pragma once

#include "engine/scoring/chain.hpp"

namespace matula::scoring {

/// What the steps of a specific gravity are worked from. Relative densities, degrees Celsius, g/dL.
struct GravityBasis {
  double zero_error = 0; ///< The float's reading in water less 1.000, as the learner wrote or could see it.
  double temperature_c = 20; ///< As the learner wrote it, or as it was.
  double calibration_c = 15;
  double per_degrees_c = 3; ///< 0.001 for every so many degrees.
  double physical_temperature_correction = 0;
  std::vector<Span> protein_g_dl; ///< What is there, and what the learner's own grade stands for.
  std::vector<Span> glucose_g_dl;
  double protein_rule = 0.003; ///< Per g/dL.
  double glucose_rule = 0.004;
  double protein_physical = 0.003;
  double glucose_physical = 0.004;
};

/// The written lines; nothing where a line was left empty.
struct GravityLines {
  std::optional<double> zero;
  std::optional<double> temperature;
  std::optional<double> protein;
  std::optional<double> glucose;
  std::optional<double> corrected;
};

/// The five steps with every accepted correction and every slip worth naming.
[[nodiscard]] std::vector<Step> gravity_steps(const GravityBasis& basis, const GravityLines& lines);

} // namespace matula::scoring
