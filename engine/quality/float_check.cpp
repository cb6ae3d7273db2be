#include "engine/quality/float_check.hpp"

#include "sim/matter/density.hpp"

#include <fmt/format.h>

#include <cmath>

namespace matula::quality {

namespace {

constexpr double glass_per_k = 25e-6; // ISO 1768:1975, conventional cubic expansion of glass hydrometers
constexpr double division = 0.001;
constexpr double discard_from = 0.002;
constexpr double rounding = 1e-9;

} // namespace

FloatVerdict float_verdict(double error) {
  const double size = std::abs(std::round(error / division) * division);
  return size > discard_from + rounding ? FloatVerdict::Discard
         : size > rounding              ? FloatVerdict::Correct
                                        : FloatVerdict::Good;
}

FloatCheck check_float(double reading, double water_c, double calibration_c) {
  FloatCheck check;
  check.expected = matter::water_density_kg_m3(water_c) / matter::water_density_kg_m3(calibration_c) *
                   (1 + glass_per_k * (water_c - calibration_c));
  const double off = reading - check.expected;
  // Read to a division, so half of one is no error.
  check.zero_error = std::round(off / division) * division;
  check.verdict = float_verdict(check.zero_error);
  if (check.verdict == FloatVerdict::Discard) {
    check.words = fmt::format("{:+.3f} off: throw the float away, its scale has slipped or it is cracked.",
                              check.zero_error);
  } else if (check.verdict == FloatVerdict::Correct) {
    check.words =
        fmt::format("{:+.3f} off: write it down and take it off every reading today.", check.zero_error);
  } else {
    check.words = "Within half a division of what water must read: fit for use.";
  }
  return check;
}

} // namespace matula::quality
