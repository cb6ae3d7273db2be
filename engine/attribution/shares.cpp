#include "engine/attribution/shares.hpp"

#include "sim/optics/random.hpp"

#include <algorithm>
#include <atomic>
#include <cmath>
#include <future>
#include <numeric>
#include <set>

namespace matula::attribution {
namespace {

PutRight bit(std::size_t i) {
  return PutRight{1} << i;
}

/// An order of `count` things, fixed by seed and number.
std::vector<std::size_t> drawn_order(std::size_t count, std::uint64_t seed, std::size_t number) {
  std::vector<std::size_t> order(count);
  std::iota(order.begin(), order.end(), 0U);
  std::uint64_t bits = optics::hash(optics::hash(seed) ^ number);
  for (std::size_t i = count; i > 1; --i) {
    bits = optics::hash(bits);
    std::swap(order[i - 1], order[bits % i]);
  }
  return order;
}

/// Deviations that show when put right alone or last.
std::vector<std::size_t> find_visible(std::size_t count, double visible, Outcomes& outcomes) {
  const PutRight all = count == 0 ? 0 : static_cast<PutRight>((std::uint64_t{1} << count) - 1);
  std::vector<PutRight> sets{0, all};
  for (std::size_t i = 0; i < count; ++i) {
    sets.push_back(bit(i));
    sets.push_back(all & ~bit(i));
  }
  outcomes.learn(sets);
  std::vector<std::size_t> seen;
  for (std::size_t i = 0; i < count; ++i) {
    const double alone = outcomes.of(bit(i)) - outcomes.of(0);
    const double last = outcomes.of(all) - outcomes.of(all & ~bit(i));
    if (std::max(std::abs(alone), std::abs(last)) >= visible) {
      seen.push_back(i);
    }
  }
  return seen;
}

PutRight spread(PutRight packed, const std::vector<std::size_t>& players) {
  PutRight set = 0;
  for (std::size_t i = 0; i < players.size(); ++i) {
    set |= (packed & bit(i)) != 0 ? bit(players[i]) : 0;
  }
  return set;
}

void share_exactly(const std::vector<std::size_t>& players, Outcomes& outcomes,
                   std::vector<double>& amounts) {
  const std::size_t n = players.size();
  const PutRight sets = bit(n);
  std::vector<PutRight> all;
  for (PutRight s = 0; s < sets; ++s) {
    all.push_back(spread(s, players));
  }
  outcomes.learn(all);
  // Of all orders, the share in which exactly a set of k comes before a player: k! (n-1-k)! / n! = 1 / (n
  // C(n-1, k)).
  std::vector<double> weight(n);
  for (std::size_t k = 0; k < n; ++k) {
    weight[k] = 1.0 / static_cast<double>(n);
    for (std::size_t j = 1; j <= k; ++j) {
      weight[k] *= static_cast<double>(j) / static_cast<double>(n - j);
    }
  }
  for (std::size_t i = 0; i < n; ++i) {
    for (PutRight s = 0; s < sets; ++s) {
      if ((s & bit(i)) == 0) {
        const auto before = static_cast<std::size_t>(__builtin_popcount(s));
        amounts[players[i]] += weight[before] * (outcomes.of(all[s | bit(i)]) - outcomes.of(all[s]));
      }
    }
  }
}

void share_by_lot(const std::vector<std::size_t>& players, const Sharing& how, Outcomes& outcomes,
                  std::vector<double>& amounts) {
  std::vector<std::vector<std::size_t>> orders;
  for (std::size_t k = 0; k < how.orders; ++k) {
    orders.push_back(drawn_order(players.size(), how.seed, k));
    orders.emplace_back(orders.back().rbegin(), orders.back().rend());
  }
  std::vector<PutRight> needed;
  for (const auto& order : orders) {
    PutRight set = 0;
    for (const std::size_t i : order) {
      set |= bit(players[i]);
      needed.push_back(set);
    }
  }
  outcomes.learn(needed);
  for (const auto& order : orders) {
    PutRight set = 0;
    for (const std::size_t i : order) {
      const PutRight with = set | bit(players[i]);
      amounts[players[i]] += (outcomes.of(with) - outcomes.of(set)) / static_cast<double>(orders.size());
      set = with;
    }
  }
}

} // namespace

void Outcomes::learn(const std::vector<PutRight>& sets) {
  std::set<PutRight> wanted;
  for (const PutRight set : sets) {
    if (known_.count(set) == 0) {
      wanted.insert(set);
    }
  }
  const std::vector<PutRight> list(wanted.begin(), wanted.end());
  std::vector<double> found(list.size());
  std::atomic<std::size_t> next{0};
  const auto work = [&] {
    for (std::size_t i = next++; i < list.size(); i = next++) {
      found[i] = outcome_(list[i]);
    }
  };
  if (list.size() > 1) {
    auto other = std::async(std::launch::async, work);
    work();
    other.get();
  } else {
    work();
  }
  for (std::size_t i = 0; i < list.size(); ++i) {
    known_[list[i]] = found[i];
  }
}

double Outcomes::of(PutRight set) {
  const auto found = known_.find(set);
  if (found != known_.end()) {
    return found->second;
  }
  learn({set});
  return known_.at(set);
}

Shares share_out(std::size_t count, const Sharing& how, Outcomes& outcomes) {
  const auto players = find_visible(count, how.visible, outcomes);
  Shares shares;
  shares.matters.assign(count, false);
  shares.amounts.assign(count, 0);
  PutRight all = 0;
  for (const std::size_t i : players) {
    shares.matters[i] = true;
    all |= bit(i);
  }
  shares.found = outcomes.of(0);
  shares.right = outcomes.of(all);
  shares.exact = players.size() <= how.exact_up_to;
  if (shares.exact) {
    share_exactly(players, outcomes, shares.amounts);
  } else {
    share_by_lot(players, how, outcomes, shares.amounts);
  }
  return shares;
}

} // namespace matula::attribution
