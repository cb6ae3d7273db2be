#include "sim/reaction/index.hpp"

#include "sim/reaction/rate.hpp"
#include "sim/reaction/react.hpp"
#include "sim/reaction/solids.hpp"

#include <algorithm>
#include <cmath>
#include <memory>
#include <set>
#include <utility>

namespace matula::reaction {

namespace {

using Things = std::set<std::size_t>;

/// Adds a row that waits for `count` of the things it asks for.
void add(Index& index, const Things& asks_for, std::size_t count, const Things& makes) {
  for (const std::size_t thing : asks_for) {
    index.asked_by[thing].push_back(index.rows.size());
  }
  index.rows.push_back({static_cast<std::uint8_t>(count), {makes.begin(), makes.end()}});
}

void add(Index& index, const Reaction& row) {
  Things asks_for;
  Things makes;
  if (const auto* law = std::get_if<MassAction>(&row.law)) {
    for (const auto* part : {&law->orders, &law->saturation}) {
      for (const auto& [id, number] : *part) {
        asks_for.insert(id);
      }
    }
  } else {
    const auto& reduction = std::get<SaturatingReduction>(row.law);
    asks_for.insert({reduction.substrate, reduction.partner});
  }
  for (const auto& [id, change] : row.changes) {
    (change < 0 ? asks_for : makes).insert(id);
  }
  add(index, asks_for, asks_for.size(), makes);
  index.needs_ph.push_back(needs_ph(row));
}

/// A solid falls out of what is dissolved, or dissolves: one of them is enough.
void add(Index& index, const Precipitation& row) {
  const std::size_t solid = index.species + row.solid;
  Things makes{solid};
  for (const auto& [id, count] : row.formula) {
    makes.insert(id);
  }
  add(index, {row.formula.front().first, solid}, 1, makes);
}

void add(Index& index, const Breakdown& row) {
  Things makes;
  for (const auto& [id, share] : row.releases) {
    makes.insert(id);
  }
  if (row.becomes) {
    makes.insert(index.species + *row.becomes);
  }
  add(index, {index.species + row.kind}, 1, makes);
}

/// First order in the one substance it uses up, whatever else is there, light and air included.
bool plain(const Reaction& row) {
  const auto* law = std::get_if<MassAction>(&row.law);
  if (law == nullptr || row.light_share > 0 || row.oxygen > 0 || needs_ph(row) || !law->saturation.empty() ||
      !law->inhibitors.empty() || law->orders.size() != 1) {
    return false;
  }
  const auto& [from, order] = law->orders.front();
  const auto used = [](const auto& change) { return change.second < 0; };
  const auto first = std::find_if(row.changes.begin(), row.changes.end(), used);
  return order == 1 && std::count_if(row.changes.begin(), row.changes.end(), used) == 1 &&
         first->first == from;
}

/// One mol of one substance becomes one mol of another.
bool plain_turn(const Reaction& row) {
  return plain(row) && row.changes.size() == 2 && std::abs(row.changes.front().second) == 1 &&
         std::abs(row.changes.back().second) == 1;
}

bool takes_back(const Reaction& one, const Reaction& other) {
  return std::all_of(one.changes.begin(), one.changes.end(), [&other](const auto& change) {
    return std::find(other.changes.begin(), other.changes.end(), std::pair(change.first, -change.second)) !=
           other.changes.end();
  });
}

void find_couples(Index& index, const std::vector<Reaction>& rows) {
  index.taken_back_by.assign(rows.size(), none);
  for (std::size_t i = 0; i < rows.size(); ++i) {
    if (!plain_turn(rows[i]) || index.taken_back_by[i] != none) {
      continue;
    }
    for (std::size_t j = i + 1; j < rows.size(); ++j) {
      if (index.taken_back_by[j] == none && plain_turn(rows[j]) && takes_back(rows[i], rows[j])) {
        index.taken_back_by[i] = j;
        index.taken_back_by[j] = i;
        break;
      }
    }
  }
}

/// Follows from what is there to what can come of it.
class Search {
public:
  explicit Search(const Index& index) : index_(index), there_(index.asked_by.size()) {
    waits_for_.reserve(index.rows.size());
    for (const Index::Row& row : index.rows) {
      waits_for_.push_back(row.waits_for);
    }
    found_.resize(index.rows.size());
    for (std::size_t row = 0; row < waits_for_.size(); ++row) {
      if (waits_for_[row] == 0) {
        goes_on(row);
      }
    }
  }

  void add(std::size_t thing) {
    if (there_[thing] == 0) {
      there_[thing] = 1;
      news_.push_back(thing);
    }
  }
  void follow() {
    while (!news_.empty()) {
      const std::size_t thing = news_.back();
      news_.pop_back();
      for (const std::size_t row : index_.asked_by[thing]) {
        if (waits_for_[row] > 0 && --waits_for_[row] == 0) {
          goes_on(row);
        }
      }
    }
  }
  /// Rows first..last - 1 that can go on, numbered from `first`.
  [[nodiscard]] std::vector<std::size_t> found(std::size_t first, std::size_t last) const {
    std::vector<std::size_t> list;
    for (std::size_t row = first; row < last; ++row) {
      if (found_[row] != 0) {
        list.push_back(row - first);
      }
    }
    return list;
  }

private:
  void goes_on(std::size_t row) {
    found_[row] = 1;
    for (const std::size_t thing : index_.rows[row].makes) {
      add(thing);
    }
  }

  const Index& index_;
  std::vector<char> there_;
  std::vector<char> found_;
  std::vector<std::uint8_t> waits_for_;
  std::vector<std::size_t> news_;
};

} // namespace

Index make_index(const Network& network, const matter::Catalogue& catalogue) {
  Index index;
  index.species = catalogue.species.size();
  index.asked_by.resize(index.species + catalogue.particles.size());
  for (const Reaction& row : network.reactions) {
    add(index, row);
  }
  for (const Precipitation& row : network.precipitations) {
    add(index, row);
    index.precipitations.push_back({solubility_named(row.law), solid_molar_mass_g(row, catalogue)});
  }
  for (const Breakdown& row : network.breakdowns) {
    add(index, row);
  }
  find_couples(index, network.reactions);
  return index;
}

const Index& index_of(const Network& network, const matter::Catalogue& catalogue,
                      std::optional<Index>& spare) {
  const Index* own = network.index.get();
  const std::size_t rows =
      network.reactions.size() + network.precipitations.size() + network.breakdowns.size();
  if (own != nullptr && own->rows.size() == rows && own->needs_ph.size() == network.reactions.size() &&
      own->precipitations.size() == network.precipitations.size()) {
    return *own;
  }
  return spare.emplace(make_index(network, catalogue));
}

void prepare(Network& network, const matter::Catalogue& catalogue) {
  network.index = std::make_shared<const Index>(make_index(network, catalogue));
}

Possible possible_rows(const matter::Mixture& mixture, const Index& index) {
  return LastPossible().rows(mixture, index);
}

bool LastPossible::same(const matter::Mixture& mixture, const Index& index) const {
  if (there_.empty()) {
    return false;
  }
  int apart = 0;
  for (std::size_t i = 0; i < mixture.mmol.size(); ++i) {
    apart |= (mixture.mmol[i] > 0 ? 1 : 0) ^ there_[i];
  }
  std::size_t solids = 0;
  for (const auto& [kind, population] : mixture.populations.present()) {
    const int here = population.empty() ? 0 : 1;
    solids += static_cast<std::size_t>(here);
    apart |= here & ~there_[index.species + kind];
  }
  return apart == 0 && solids == solids_;
}

const Possible& LastPossible::rows(const matter::Mixture& mixture, const Index& index) {
  if (same(mixture, index)) {
    return possible_;
  }
  there_.assign(index.asked_by.size(), 0);
  for (std::size_t i = 0; i < mixture.mmol.size(); ++i) {
    there_[i] = mixture.mmol[i] > 0 ? 1 : 0;
  }
  solids_ = 0;
  for (const auto& [kind, population] : mixture.populations.present()) {
    there_[index.species + kind] = population.empty() ? 0 : 1;
    solids_ += population.empty() ? 0 : 1;
  }
  Search search(index);
  for (std::size_t thing = 0; thing < there_.size(); ++thing) {
    if (there_[thing] != 0) {
      search.add(thing);
    }
  }
  search.follow();
  const std::size_t reactions = index.needs_ph.size();
  possible_ = {search.found(0, reactions), search.found(reactions, reactions + index.precipitations.size())};
  return possible_;
}

} // namespace matula::reaction
