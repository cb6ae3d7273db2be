#pragma once

#include "sim/reading/reference_reader.hpp"

namespace matula::reading {

/// How much brighter on black the brightest 2 mm across the tube are than the tube's middle brightness:
/// Weber's fraction over that brightness and the dark surround. 0 without a ring.
[[nodiscard]] double ring_veil(const appearance::Appearance& black, double dark_surround);

/// A ring of cloud between two liquids, graded by the lines of the scale.
[[nodiscard]] GradeReading read_cloud_ring(const Looks& looks, const ColourScale& scale,
                                           const Thresholds& thresholds);

} // namespace matula::reading
