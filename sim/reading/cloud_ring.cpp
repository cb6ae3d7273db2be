#include "sim/reading/cloud_ring.hpp"

#include "sim/reading/colour_strength.hpp"
#include "sim/reading/observables.hpp"

#include <algorithm>
#include <vector>

namespace matula::reading {

double ring_veil(const appearance::Appearance& black, double dark_surround) {
  std::vector<double> all;
  for_ring_bands(black, [&](const Stretch& band) { all.push_back(mean_luminance_on_black(black, band)); });
  if (all.empty()) {
    return 0;
  }
  const double brightest = *std::max_element(all.begin(), all.end());
  const auto middle = all.begin() + static_cast<std::ptrdiff_t>(all.size() / 2);
  std::nth_element(all.begin(), middle, all.end());
  return std::max(brightest - *middle, 0.0) / (*middle + dark_surround);
}

GradeReading read_cloud_ring(const Looks& looks, const ColourScale& scale, const Thresholds& thresholds) {
  return graded_by_lines(ring_veil(*looks.black, thresholds.dark_surround), scale);
}

} // namespace matula::reading
