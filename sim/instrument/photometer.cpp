#include "sim/instrument/photometer.hpp"

#include <algorithm>
#include <cmath>

namespace matula::instrument {

Display show(const Photometer& p, double specimen, double blank, double chance) {
  constexpr double near_the_ceiling = 0.1;
  const auto passed = [&p](double extinction) {
    return (std::pow(10.0, -extinction) + p.stray_share) / (1 + p.stray_share);
  };
  const double seen = std::log10(passed(blank) / passed(specimen));
  const double ceiling = std::log10(passed(blank) * (1 + p.stray_share) / p.stray_share);
  const double played = seen + (2 * chance - 1) * p.flicker;
  Display display;
  display.absorbance = std::round(played / p.step) * p.step;
  display.over = seen > ceiling - near_the_ceiling;
  return display;
}

} // namespace matula::instrument
