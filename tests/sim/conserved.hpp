#pragma once

#include "sim/column/column.hpp"
#include "sim/matter/mixture.hpp"
#include "sim/reaction/react.hpp"

#include <vector>

namespace matula::tests {

/// Weighted sums of amounts that no row of a network can change: the left null space of its stoichiometry.
/// What is left out of them is exactly what some row says it makes, uses up, takes from the air or gives to
/// it.
class ConservedSums {
public:
  ConservedSums(const reaction::Network& network, const matter::Catalogue& catalogue);

  /// One value a sum: mmol of dissolved species and grams of solids, each times its weight.
  [[nodiscard]] std::vector<double> of(const matter::Mixture& mixture) const;
  /// The same with every weight made positive: the scale a difference is judged by.
  [[nodiscard]] std::vector<double> scale_of(const matter::Mixture& mixture) const;
  [[nodiscard]] std::size_t count() const { return weights_.size(); }
  /// Species with the largest weights in a sum, for messages.
  [[nodiscard]] std::string name(std::size_t sum) const;

private:
  [[nodiscard]] std::vector<double> sums(const matter::Mixture& mixture, bool absolute) const;

  const matter::Catalogue& catalogue_;
  std::vector<std::vector<double>> weights_; ///< By sum, then species and solids.
};

} // namespace matula::tests
