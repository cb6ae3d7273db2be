#pragma once

#include "engine/attribution/explanation.hpp"
#include "engine/attribution/work.hpp"
#include "engine/scoring/ledgers.hpp"
#include "engine/scoring/standards.hpp"

namespace matula::attribution {

/// A finished sitting and everything it is explained from.
struct Sitting {
  const assets::World& world;
  const scoring::Standards& standards;
  const scenario::Scenario& scenario;
  const scoring::Report& report;
  const bench::Setup& setup;
  bench::State fresh; ///< The bench before the first action.
  std::vector<Heard> heard;
  scoring::Replay replay;
};

/// Events before the last one that wrote `item`; all when it was never written.
[[nodiscard]] std::size_t events_before(const std::vector<Heard>& heard, const std::string& item);

/// Why the tube (or paper) of a test that has words showed what it did.
[[nodiscard]] Explanation explain_tube(const Sitting& sitting, const scoring::TestRule& test);

/// Why the figure for the specific gravity is what it is.
[[nodiscard]] Explanation explain_gravity(const Sitting& sitting);

/// Takes the shares over, largest first, and the words.
void conclude(Explanation& explanation, const std::vector<std::string>& keys,
              const std::vector<std::string>& words, const std::vector<std::string>& rules,
              const std::vector<bool>& matters, const std::vector<double>& amounts);

} // namespace matula::attribution
