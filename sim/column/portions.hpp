#pragma once

#include "sim/matter/mixture.hpp"

#include <cstddef>
#include <vector>

namespace matula::column {

/// Neighbouring layers first..last - 1 that hold the same liquid, so that what happens inside them is worked
/// out once.
struct Run {
  std::size_t first = 0;
  std::size_t last = 0;
};

/// Groups neighbours that no eye and no reaction could tell apart: a thousandth in what they hold, 0.05 K,
/// the same shear.
[[nodiscard]] std::vector<Run> alike_runs(const std::vector<matter::Mixture>& layers,
                                          const std::vector<double>& shear_per_s);

/// The layers of a run poured together, and dealt out again by volume; nothing is lost.
[[nodiscard]] matter::Mixture pool(const std::vector<matter::Mixture>& layers, const Run& run);
void deal(std::vector<matter::Mixture>& layers, const Run& run, const matter::Mixture& pooled);

} // namespace matula::column
