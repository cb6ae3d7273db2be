#pragma once

#include "engine/practice/blueprint.hpp"
#include "engine/practice/item.hpp"

#include <cstdint>
#include <string>
#include <vector>

namespace matula::practice {

/// One set of unknowns made by a blueprint.
struct Quiz {
  std::string blueprint; ///< Its key,
  std::string title;     ///< and title.
  int minutes = 0;       ///< 0: as long as it takes.
  std::uint64_t seed = 1;
  std::vector<Unknown> unknowns; ///< In the order they are put.
};

/// The same blueprint and seed give the same set; another seed gives other unknowns that are as hard: of
/// every tube the distance to the line is the same to a twentieth, of every calculation and delivery the
/// difficulty is that of the blueprint's first set.
[[nodiscard]] Quiz make_quiz(const Store& store, const Blueprint& blueprint, std::uint64_t seed);

/// How hard an unknown is to be expected before it is made.
[[nodiscard]] double expected_difficulty(const Store& store, const Unknown& unknown);

/// Marks of one ledger.
struct LedgerSum {
  scoring::Ledger ledger = scoring::Ledger::Reading;
  int earned = 0;
  int possible = 0;
};

/// Of those ledgers that anything was marked in; never one sum of all.
[[nodiscard]] std::vector<LedgerSum> by_ledger(const std::vector<Judged>& judged);

} // namespace matula::practice
