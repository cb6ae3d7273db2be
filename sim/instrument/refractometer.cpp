#include "sim/instrument/refractometer.hpp"

#include "sim/matter/refraction.hpp"

#include <algorithm>
#include <cmath>

namespace matula::instrument {

ShadowEdge read_edge(const Refractometer& r, double index, double prism_c, double extinction_per_mm) {
  constexpr double printed_c = 20;
  ShadowEdge edge;
  double zero = r.zero_index;
  if (r.compensated) {
    // The scale moves as water's own index does.
    const double within = std::clamp(prism_c, r.compensated_from_c, r.compensated_to_c);
    zero += matter::water_index(within) - matter::water_index(printed_c);
  }
  edge.reading = 1 + (index - zero) / r.index_per_density + r.zero_error;
  edge.beyond_end = edge.reading > r.scale_end;
  edge.contrast = std::exp(-extinction_per_mm * r.glancing_path_mm);
  edge.spread = r.division * r.blur_division * (1 - edge.contrast);
  return edge;
}

} // namespace matula::instrument
