#pragma once

#include "engine/author/shelf.hpp"
#include "engine/scenario/review.hpp"
#include "engine/scenario/scenario.hpp"
#include "engine/scoring/report.hpp"

#include <string>
#include <vector>

namespace matula::author {

/// Plays every worked sitting of a case's [review] and compares what it earns with what stands there; a
/// sentence for each difference. Empty when all came out the same, or there is none.
[[nodiscard]] std::vector<std::string>
differs_from_worked(const Shelf& shelf, const scenario::Scenario& scenario, const scenario::Review& review);

} // namespace matula::author
