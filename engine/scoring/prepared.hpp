#pragma once

#include "engine/scenario/scenario.hpp"
#include "engine/scoring/standards.hpp"
#include "sim/bench/bench.hpp"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace matula::scoring {

/// What each asked test done by the book came to, by its key; nothing where the recipe was stopped.
using BookReadings = std::map<std::string, std::optional<reading::GradeReading>>;

/// All that the marks of every sitting at one scenario share, worked out once: the bench before the first
/// action, and the tests by the book. The standards' rules and the scenario's [marking] do not enter it.
struct Prepared {
  scenario::Scenario scenario;
  bench::Setup setup; ///< Points into the world, which must outlive it.
  bench::State fresh;
  BookReadings books;
};

/// Does the tests by the book one after the other, on this thread.
[[nodiscard]] Prepared prepare(const assets::World& world, const Standards& standards,
                               const scenario::Scenario& scenario);

/// As score() in standards.hpp and byte for byte the same report; may be called from several threads at once.
[[nodiscard]] Report score(const assets::World& world, const Standards& standards, const Prepared& prepared,
                           const std::vector<sitting::Event>& log);

} // namespace matula::scoring
