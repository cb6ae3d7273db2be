#include "tests/sim/conserved.hpp"

#include "sim/reaction/solids.hpp"

#include <algorithm>
#include <cmath>
#include <string>

namespace matula::tests {

namespace {

using Matrix = std::vector<std::vector<double>>;

// Rows are printed to six or seven figures, so two ways to the same solid agree to that and no better.
constexpr double same_row = 1e-4;

/// What one unit of each row changes: mmol of species, then grams of solids, by column.
Matrix stoichiometry(const reaction::Network& network, const matter::Catalogue& catalogue) {
  const std::size_t width = catalogue.species.size() + catalogue.particles.size();
  Matrix rows;
  for (const reaction::Reaction& reaction : network.reactions) {
    std::vector<double> row(width, 0.0);
    for (const auto& [id, change] : reaction.changes) {
      row[id] += change;
    }
    rows.push_back(std::move(row));
  }
  constexpr double mol_per_mmol = 1e-3;
  for (const reaction::Precipitation& precipitation : network.precipitations) {
    std::vector<double> row(width, 0.0);
    for (const auto& [id, count] : precipitation.formula) {
      row[id] -= count;
    }
    row[catalogue.species.size() + precipitation.solid] +=
        reaction::solid_molar_mass_g(precipitation, catalogue) * mol_per_mmol;
    rows.push_back(std::move(row));
  }
  for (const reaction::Breakdown& breakdown : network.breakdowns) {
    std::vector<double> row(width, 0.0);
    for (const auto& [id, per_g] : breakdown.releases) {
      row[id] += per_g / catalogue.species[id].molar_mass_g_per_mol / mol_per_mmol;
    }
    row[catalogue.species.size() + breakdown.kind] -= 1;
    if (breakdown.becomes) {
      row[catalogue.species.size() + *breakdown.becomes] += 1;
    }
    rows.push_back(std::move(row));
  }
  return rows;
}

void scale_to_one(std::vector<double>& row) {
  double largest = 0;
  for (const double value : row) {
    largest = std::max(largest, std::abs(value));
  }
  for (double& value : row) {
    value /= largest > 0 ? largest : 1;
  }
}

/// Gauss-Jordan with the largest element of each row as pivot. Returns the pivot column of each row left.
std::vector<std::size_t> eliminate(Matrix& rows) {
  std::vector<std::size_t> pivots;
  Matrix kept;
  for (std::vector<double>& row : rows) {
    scale_to_one(row);
    for (std::size_t i = 0; i < kept.size(); ++i) {
      const double factor = row[pivots[i]];
      for (std::size_t c = 0; factor != 0 && c < row.size(); ++c) {
        row[c] -= factor * kept[i][c];
      }
    }
    const auto largest = std::max_element(row.begin(), row.end(),
                                          [](double a, double b) { return std::abs(a) < std::abs(b); });
    if (std::abs(*largest) < same_row) {
      continue; // says nothing new
    }
    const auto pivot = static_cast<std::size_t>(largest - row.begin());
    const double by = *largest;
    for (double& value : row) {
      value /= by;
    }
    for (std::vector<double>& earlier : kept) {
      const double factor = earlier[pivot];
      for (std::size_t c = 0; factor != 0 && c < row.size(); ++c) {
        earlier[c] -= factor * row[c];
      }
    }
    kept.push_back(row);
    pivots.push_back(pivot);
  }
  rows = std::move(kept);
  return pivots;
}

} // namespace

ConservedSums::ConservedSums(const reaction::Network& network, const matter::Catalogue& catalogue)
    : catalogue_(catalogue) {
  Matrix rows = stoichiometry(network, catalogue);
  const std::vector<std::size_t> pivots = eliminate(rows);
  const std::size_t width = catalogue.species.size() + catalogue.particles.size();
  for (std::size_t free = 0; free < width; ++free) {
    if (std::find(pivots.begin(), pivots.end(), free) != pivots.end()) {
      continue;
    }
    std::vector<double> weight(width, 0.0);
    weight[free] = 1;
    for (std::size_t i = 0; i < rows.size(); ++i) {
      weight[pivots[i]] = -rows[i][free];
    }
    weights_.push_back(std::move(weight));
  }
}

std::vector<double> ConservedSums::sums(const matter::Mixture& mixture, bool absolute) const {
  std::vector<double> made;
  made.reserve(weights_.size());
  const std::size_t species = mixture.mmol.size();
  for (const std::vector<double>& weight : weights_) {
    double sum = 0;
    for (std::size_t i = 0; i < weight.size(); ++i) {
      if (weight[i] != 0) {
        const double amount = i < species ? mixture.mmol[i] : mixture.populations[i - species].total_g();
        sum += absolute ? std::abs(weight[i] * amount) : weight[i] * amount;
      }
    }
    made.push_back(sum);
  }
  return made;
}

std::vector<double> ConservedSums::of(const matter::Mixture& mixture) const {
  return sums(mixture, false);
}

std::vector<double> ConservedSums::scale_of(const matter::Mixture& mixture) const {
  return sums(mixture, true);
}

std::string ConservedSums::name(std::size_t sum) const {
  std::string words;
  for (std::size_t i = 0; i < weights_[sum].size(); ++i) {
    if (weights_[sum][i] != 0 && words.size() < 200) {
      words += words.empty() ? "" : " ";
      words += std::to_string(weights_[sum][i]) + "*" +
               (i < catalogue_.species.size() ? catalogue_.species[i].key
                                              : catalogue_.particles[i - catalogue_.species.size()].key);
    }
  }
  return words;
}

} // namespace matula::tests
