#pragma once

#include "engine/scenario/scenario.hpp"
#include "engine/scoring/by_the_book.hpp"
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

/// What the bench and the tests by the book came to before anybody looked: the same for every seed unless
/// chance was drawn on the way. Variants of one examination often differ in nothing else.
struct BookWork {
  bench::State fresh;
  std::map<std::string, BookTube> tubes; ///< By test; of each bench only what is read.
  bool drew_chance = false;
};

/// Does the tests by the book one after the other, on this thread; `kept` gets their tubes.
[[nodiscard]] Prepared prepare(const assets::World& world, const Standards& standards,
                               const scenario::Scenario& scenario, BookWork* kept = nullptr);

/// The same, to the bit, from the work done for a scenario that differs in its seed alone. Nothing when
/// chance entered that.
[[nodiscard]] std::optional<Prepared> prepare_from(const BookWork& work, const assets::World& world,
                                                   const Standards& standards,
                                                   const scenario::Scenario& scenario);

/// As score() in standards.hpp and byte for byte the same report; may be called from several threads at once.
[[nodiscard]] Report score(const assets::World& world, const Standards& standards, const Prepared& prepared,
                           const std::vector<sitting::Event>& log);

} // namespace matula::scoring
