#pragma once

#include "sim/appearance/optics_tables.hpp"

#include <array>

namespace matula::appearance {

/// The cylinder table made ready for many look-ups: interpolates the logarithm of the radiance, which is
/// straight in the absorption of a single path.
class CylinderLookup {
public:
  /// Radiance towards the eye at every lateral sample.
  struct Light {
    std::array<double, lateral_samples> on_white{};
    std::array<double, lateral_samples> on_black{};
  };

  /// The table must be complete: |on_white| = |reduced_scatter| |absorption| lateral_samples, both grids from
  /// 0 up.
  explicit CylinderLookup(const CylinderTable& table);

  /// Light of a tube of the given mu_s' d and mu_a d. Beyond the scattering grid the tube is so deep that
  /// only their ratio matters; beyond the absorption grid it is as dark as at its end.
  [[nodiscard]] Light at(double reduced_scatter, double absorption) const;

private:
  const CylinderTable& table_;
  std::vector<double> log_values_; ///< [i_scatter][i_absorb][white, black][lateral]
};

} // namespace matula::appearance
