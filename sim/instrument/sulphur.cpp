#include "sim/instrument/sulphur.hpp"

#include "sim/optics/nature.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace matula::instrument {

namespace {

constexpr double water_kg_m3 = 1000;

/// Middles of nine equal parts of a normal distribution, in standard deviations.
constexpr std::array<double, wetting_classes> normal_ninths{-1.593, -0.967, -0.589, -0.282, 0,
                                                            0.282,  0.589,  0.967,  1.593};

double contact_cosine(const Sulphur& sulphur, std::size_t wetting_class, double tension_mn_m) {
  const double above = tension_mn_m - critical_tension(sulphur, wetting_class);
  return std::clamp(1 - sulphur.cosine_per_mn_m * above, -1.0, 1.0);
}

} // namespace

double Strewn::floating() const {
  double sum = 0;
  for (const double mg : floating_mg) {
    sum += mg;
  }
  return sum;
}

Strewn strew(const Sulphur& sulphur) {
  Strewn strewn;
  strewn.strewn_mg = sulphur.pinch_mg;
  strewn.floating_mg.fill(sulphur.pinch_mg / static_cast<double>(wetting_classes));
  return strewn;
}

double critical_tension(const Sulphur& sulphur, std::size_t wetting_class) {
  return sulphur.critical_tension_mn_m + sulphur.critical_spread_mn_m * normal_ninths[wetting_class];
}

bool carried(const Sulphur& sulphur, std::size_t wetting_class, double tension_mn_m, double weights) {
  const double radius_m = sulphur.grain_radius_mm * 1e-3;
  const double half_angle_sine_squared = (1 - contact_cosine(sulphur, wetting_class, tension_mn_m)) / 2;
  const double pull_n = 2 * std::numbers::pi * radius_m * tension_mn_m * 1e-3 * half_angle_sine_squared;
  const double volume_m3 = 4.0 / 3 * std::numbers::pi * radius_m * radius_m * radius_m;
  return pull_n > volume_m3 * (sulphur.density_kg_m3 - water_kg_m3) * nature::gravity_m_s2 * weights;
}

double sink(Strewn& strewn, const Sulphur& sulphur, double tension_mn_m, double seconds, double weights) {
  double sunk_mg = 0;
  for (std::size_t i = 0; i < wetting_classes; ++i) {
    double& mg = strewn.floating_mg[i];
    const double above = std::max(0.0, tension_mn_m - critical_tension(sulphur, i));
    const double per_s = sulphur.sinking_per_s * std::exp(-above / sulphur.sinking_mn_m);
    const double stays = carried(sulphur, i, tension_mn_m, weights) ? std::exp(-per_s * seconds) : 0.0;
    sunk_mg += mg * (1 - stays);
    mg *= stays;
  }
  return sunk_mg;
}

} // namespace matula::instrument
