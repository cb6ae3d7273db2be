#pragma once

#include <string>

namespace matula::quality {

/// What to do with a urinometer after its morning reading in distilled water.
enum class FloatVerdict { Good, Correct, Discard };

struct FloatCheck {
  FloatVerdict verdict = FloatVerdict::Good;
  double zero_error = 0; ///< To take off every reading of the day.
  double expected = 1;   ///< What a float without fault reads in water of that temperature.
  std::string words;     ///< For the learner.
};

/// What an error, read to a division of 0.001, asks for.
[[nodiscard]] FloatVerdict float_verdict(double error);

/// Distilled water at the calibration temperature reads 1.000 within 0.001; the error is logged and taken
/// off; a float off by more than 0.002 is thrown away (A. Kassa et al., Urinalysis lecture notes, 2002, p.
/// 33; limit of discarding: common practice). Water at another temperature reads what its density and the
/// glass make of it.
[[nodiscard]] FloatCheck check_float(double reading, double water_c, double calibration_c);

} // namespace matula::quality
