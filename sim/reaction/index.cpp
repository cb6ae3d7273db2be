#include "sim/reaction/index.hpp"

#include "sim/reaction/rate.hpp"
#include "sim/reaction/react.hpp"
#include "sim/reaction/solids.hpp"

#include <memory>

namespace matula::reaction {

namespace {

void add_needs(Index& index, const Reaction& row) {
  std::vector<matter::SpeciesId>& ids = index.ids;
  Index::Needs needs;
  needs.ph = needs_ph(row);
  needs.first = ids.size();
  if (const auto* law = std::get_if<MassAction>(&row.law)) {
    for (const auto* part : {&law->orders, &law->saturation}) {
      for (const auto& [id, number] : *part) {
        ids.push_back(id);
      }
    }
  } else {
    const auto& reduction = std::get<SaturatingReduction>(row.law);
    ids.insert(ids.end(), {reduction.substrate, reduction.partner});
  }
  for (const bool made : {false, true}) {
    for (const auto& [id, change] : row.changes) {
      if ((change >= 0) == made) {
        ids.push_back(id);
      }
    }
    needs.made = made ? needs.made : ids.size();
  }
  needs.end = ids.size();
  index.reactions.push_back(needs);
}

/// The rows that are possible so far, and what they bring.
class Search {
public:
  Search(const matter::Mixture& mixture, const Network& network, const Index& index)
      : network_(network), index_(index), present_(mixture.mmol.size()), solid_(mixture.populations.size()),
        reaction_(network.reactions.size(), 0), precipitation_(network.precipitations.size(), 0),
        breakdown_(network.breakdowns.size(), 0) {
    for (std::size_t i = 0; i < present_.size(); ++i) {
      present_[i] = mixture.mmol[i] > 0 ? 1 : 0;
    }
    for (const auto& [kind, population] : mixture.populations.present()) {
      solid_[kind] = population.empty() ? 0 : 1;
    }
  }

  /// Whether another row became possible.
  bool again() {
    bool news = false;
    for (std::size_t i = 0; i < reaction_.size(); ++i) {
      const Index::Needs& row = index_.reactions[i];
      if (reaction_[i] == 0 && all_present(row)) {
        reaction_[i] = 1;
        news = true;
        for (std::size_t at = row.made; at < row.end; ++at) {
          present_[index_.ids[at]] = 1;
        }
      }
    }
    for (std::size_t i = 0; i < precipitation_.size(); ++i) {
      const Precipitation& row = network_.precipitations[i];
      if (precipitation_[i] == 0 && (solid_[row.solid] != 0 || present_[row.formula.front().first] != 0)) {
        precipitation_[i] = 1;
        news = true;
        solid_[row.solid] = 1;
        for (const auto& [id, count] : row.formula) {
          present_[id] = 1;
        }
      }
    }
    for (std::size_t i = 0; i < breakdown_.size(); ++i) {
      const Breakdown& row = network_.breakdowns[i];
      if (breakdown_[i] == 0 && solid_[row.kind] != 0) {
        breakdown_[i] = 1;
        news = true;
        for (const auto& [id, share] : row.releases) {
          present_[id] = 1;
        }
        if (row.becomes) {
          solid_[*row.becomes] = 1;
        }
      }
    }
    return news;
  }

  [[nodiscard]] Possible found() const { return {numbers(reaction_), numbers(precipitation_)}; }

private:
  [[nodiscard]] bool all_present(const Index::Needs& row) const {
    for (std::size_t at = row.first; at < row.made; ++at) {
      if (present_[index_.ids[at]] == 0) {
        return false;
      }
    }
    return true;
  }
  [[nodiscard]] static std::vector<std::size_t> numbers(const std::vector<char>& flags) {
    std::vector<std::size_t> list;
    list.reserve(flags.size());
    for (std::size_t i = 0; i < flags.size(); ++i) {
      if (flags[i] != 0) {
        list.push_back(i);
      }
    }
    return list;
  }

  const Network& network_;
  const Index& index_;
  std::vector<char> present_;
  std::vector<char> solid_;
  std::vector<char> reaction_;
  std::vector<char> precipitation_;
  std::vector<char> breakdown_;
};

} // namespace

Index make_index(const Network& network, const matter::Catalogue& catalogue) {
  Index index;
  for (const Reaction& row : network.reactions) {
    add_needs(index, row);
  }
  for (const Precipitation& row : network.precipitations) {
    index.precipitations.push_back({solubility_named(row.law), solid_molar_mass_g(row, catalogue)});
  }
  return index;
}

const Index& index_of(const Network& network, const matter::Catalogue& catalogue,
                      std::optional<Index>& spare) {
  const Index* own = network.index.get();
  if (own != nullptr && own->reactions.size() == network.reactions.size() &&
      own->precipitations.size() == network.precipitations.size()) {
    return *own;
  }
  return spare.emplace(make_index(network, catalogue));
}

void prepare(Network& network, const matter::Catalogue& catalogue) {
  network.index = std::make_shared<const Index>(make_index(network, catalogue));
}

Possible possible_rows(const matter::Mixture& mixture, const Network& network, const Index& index) {
  Search search(mixture, network, index);
  while (search.again()) {
  }
  return search.found();
}

} // namespace matula::reaction
