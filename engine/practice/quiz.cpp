#include "engine/practice/quiz.hpp"

#include "engine/practice/choose.hpp"
#include "engine/practice/difficulty.hpp"
#include "engine/practice/draws.hpp"
#include "engine/practice/store.hpp"
#include "engine/scoring/standards.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace matula::practice {

namespace {

/// One place in a quiz: what stands there, whatever the seed.
struct Cell {
  const Part* part = nullptr;
  std::string test;
  std::string what;
  std::string trap;
};

std::vector<Cell> cells_of(const Blueprint& blueprint) {
  std::vector<Cell> cells;
  for (const Part& part : blueprint.parts) {
    const auto tests = part.tests.empty() ? std::vector<std::string>{""} : part.tests;
    for (int i = 0; i < part.count; ++i) {
      for (const std::string& test : tests) {
        for (const std::string& what : part.what) {
          for (const std::string& trap : part.traps) {
            cells.push_back({&part, test, what, trap});
          }
        }
      }
    }
  }
  return cells;
}

Unknown candidate(const Store& store, const Cell& cell, std::uint64_t seed) {
  const Part& part = *cell.part;
  if (!has_tubes(part.skill) && part.skill != Skill::Meniscus) {
    return {part.skill, cell.what, cell.trap, 0, seed};
  }
  constexpr double give = 0.05; // Share of the distance; a logit of as much.
  constexpr double on_line = 0.02;
  const double jitter = Draws(seed).between("jitter", -1, 1);
  const double from_line =
      part.from_line > 0 ? std::min(part.from_line * (1 + give * jitter), 0.5) : on_line * std::abs(jitter);
  if (part.skill == Skill::Meniscus) {
    return float_at(store, cell.trap, from_line, seed);
  }
  const auto grade = store.standards->rules.find_test(cell.test)->grade(cell.what);
  return tube_at(store, cell.test, cell.trap, static_cast<std::size_t>(*grade), from_line, seed);
}

/// As hard as what the first set has there.
Unknown fill(const Store& store, const Cell& cell, std::size_t place, const Draws& draws) {
  constexpr std::uint64_t first_set = 1;
  constexpr int most_tries = 40;
  constexpr double alike = 0.02;
  const double wanted = expected_difficulty(
      store, candidate(store, cell, Draws(first_set).seed(fmt::format("{} 0", cell.what))));
  Unknown best;
  double best_off = 0;
  for (int attempt = 0; attempt < most_tries; ++attempt) {
    const Unknown unknown = candidate(store, cell, draws.seed(fmt::format("{} {}", place, attempt)));
    const double off =
        is_of_rules(unknown.skill) ? std::abs(expected_difficulty(store, unknown) - wanted) : 0;
    if (attempt == 0 || off < best_off) {
      best = unknown;
      best_off = off;
    }
    if (off < alike) {
      break;
    }
  }
  return best;
}

/// In an order of chance in which, as far as it goes, no skill comes twice running.
std::vector<Unknown> interleaved(std::vector<Unknown> unknowns, const Draws& draws) {
  for (std::size_t i = unknowns.size(); i > 1; --i) {
    std::swap(unknowns[i - 1], unknowns[draws.pick(fmt::format("order {}", i), i)]);
  }
  const auto left = [&](std::size_t from, Skill skill) {
    return std::count_if(unknowns.begin() + static_cast<std::ptrdiff_t>(from), unknowns.end(),
                         [&](const Unknown& one) { return one.skill == skill; });
  };
  for (std::size_t i = 0; i < unknowns.size(); ++i) {
    std::size_t best = i;
    std::ptrdiff_t most = -1;
    for (std::size_t j = i; j < unknowns.size(); ++j) {
      const bool again = i > 0 && unknowns[j].skill == unknowns[i - 1].skill;
      const auto many = again ? 0 : left(i, unknowns[j].skill);
      if (many > most) {
        most = many;
        best = j;
      }
    }
    std::rotate(unknowns.begin() + static_cast<std::ptrdiff_t>(i),
                unknowns.begin() + static_cast<std::ptrdiff_t>(best),
                unknowns.begin() + static_cast<std::ptrdiff_t>(best) + 1);
  }
  return unknowns;
}

} // namespace

double expected_difficulty(const Store& store, const Unknown& unknown) {
  if (has_tubes(unknown.skill)) {
    const auto& rule = store.standards->rules.find_test(unknown.what)->ordinal;
    return difficulty_at(distance_to_line(unknown.target, rule, store.rules.choice.right_from),
                         store.rules.difficulty);
  }
  if (unknown.skill == Skill::Meniscus) {
    const double division = store.standards->rules.gravity.division;
    return difficulty_at(distance_to_half(unknown.target, division, store.rules.floats.full),
                         store.rules.difficulty);
  }
  return make_item(store, unknown).difficulty;
}

Quiz make_quiz(const Store& store, const Blueprint& blueprint, std::uint64_t seed) {
  const Draws draws(seed);
  const auto cells = cells_of(blueprint);
  std::vector<Unknown> unknowns;
  for (std::size_t i = 0; i < cells.size(); ++i) {
    unknowns.push_back(fill(store, cells[i], i, draws));
  }
  return {blueprint.key, blueprint.title, blueprint.minutes, seed, interleaved(std::move(unknowns), draws)};
}

std::vector<LedgerSum> by_ledger(const std::vector<Judged>& judged) {
  std::vector<LedgerSum> sums;
  for (const scoring::Ledger ledger : scoring::all_ledgers) {
    LedgerSum sum{ledger, 0, 0};
    for (const Judged& one : judged) {
      for (const auto& mark : one.marks) {
        sum.earned += mark.ledger == ledger ? mark.earned : 0;
        sum.possible += mark.ledger == ledger ? mark.possible : 0;
      }
    }
    if (sum.possible > 0) {
      sums.push_back(sum);
    }
  }
  return sums;
}

} // namespace matula::practice
