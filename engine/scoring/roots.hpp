#pragma once

#include "engine/scoring/ledgers.hpp"

namespace matula::scoring {

/// Charges every lost mark to exactly one fault. A fault of procedure that changed a tube answers for the
/// wrong conclusion drawn from it, a misread tube for what followed from the reading, and a test not done for
/// its missing result.
void charge_roots(std::vector<Mark>& marks, const Case& marked, const std::vector<Compared>& compared);

/// What was lost, by fault.
[[nodiscard]] std::vector<RootLoss> losses_by_root(const std::vector<Mark>& marks);

/// Each graded test: read right or wrong, and the case interpreted right or wrong. Empty for a case that asks
/// for no conclusion.
[[nodiscard]] std::vector<Finding> findings_of(const std::vector<Mark>& marks);

/// Sums over the graded readings, and whether the sitting is passed.
[[nodiscard]] Standing standing_of(const std::vector<Mark>& marks, const PassRule& pass, bool safety_stop);

} // namespace matula::scoring
