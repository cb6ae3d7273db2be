#include "engine/statistics/raters.hpp"

#include <cmath>
#include <numeric>
#include <stdexcept>

namespace matula::statistics {

namespace {

double readers_of(const std::vector<double>& votes) {
  return std::accumulate(votes.begin(), votes.end(), 0.0);
}

double square(double x) {
  return x * x;
}

/// Coincidences of pairs of readings, each thing weighted by one less than its readers.
std::vector<double> coincidences(const Ballots& ballots) {
  const std::size_t q = ballots.categories;
  std::vector<double> all(q * q);
  for (const auto& votes : ballots.votes) {
    const double readers = readers_of(votes);
    if (readers < 2) {
      continue; // Nothing to pair it with.
    }
    for (std::size_t c = 0; c < q; ++c) {
      for (std::size_t k = 0; k < q; ++k) {
        all[c * q + k] += votes[c] * (votes[k] - (c == k ? 1 : 0)) / (readers - 1);
      }
    }
  }
  return all;
}

/// Sums of the rows of a square table.
std::vector<double> margins_of(const std::vector<double>& table, std::size_t q) {
  std::vector<double> margins(q);
  for (std::size_t c = 0; c < q; ++c) {
    const auto row = table.begin() + static_cast<std::ptrdiff_t>(c * q);
    margins[c] = std::accumulate(row, row + static_cast<std::ptrdiff_t>(q), 0.0);
  }
  return margins;
}

double squared_difference(std::size_t c, std::size_t k, Metric metric, const std::vector<double>& margins,
                          const std::vector<double>& values) {
  if (c == k) {
    return 0;
  }
  switch (metric) {
  case Metric::Nominal:
    return 1;
  case Metric::Ordinal: {
    double between = 0;
    for (std::size_t g = std::min(c, k); g <= std::max(c, k); ++g) {
      between += margins[g];
    }
    return square(between - (margins[c] + margins[k]) / 2);
  }
  case Metric::Interval:
    return square(values[c] - values[k]);
  case Metric::Ratio:
    return square((values[c] - values[k]) / (values[c] + values[k]));
  }
  return 0;
}

} // namespace

Ballots count_votes(const std::vector<std::vector<int>>& by_thing, std::size_t categories) {
  Ballots ballots{categories, {}};
  for (const auto& readings : by_thing) {
    std::vector<double> votes(categories);
    for (const int reading : readings) {
      if (reading >= 0) {
        votes.at(static_cast<std::size_t>(reading)) += 1;
      }
    }
    ballots.votes.push_back(std::move(votes));
  }
  return ballots;
}

std::optional<double> fleiss_kappa(const Ballots& ballots) {
  if (ballots.votes.empty()) {
    return std::nullopt;
  }
  const double readers = readers_of(ballots.votes.front());
  std::vector<double> shares(ballots.categories);
  const double things = static_cast<double>(ballots.votes.size());
  double agreement = 0;
  for (const auto& votes : ballots.votes) {
    if (readers_of(votes) != readers || readers < 2) {
      throw std::invalid_argument("Fleiss' kappa needs the same number of readers, two or more, everywhere");
    }
    double pairs = 0;
    for (std::size_t k = 0; k < votes.size(); ++k) {
      shares[k] += votes[k] / (things * readers);
      pairs += votes[k] * (votes[k] - 1);
    }
    agreement += pairs / (readers * (readers - 1)) / things;
  }
  const double chance = std::inner_product(shares.begin(), shares.end(), shares.begin(), 0.0);
  return chance < 1 ? std::optional((agreement - chance) / (1 - chance)) : std::nullopt;
}

std::optional<double> krippendorff_alpha(const Ballots& ballots, Metric metric,
                                         const std::vector<double>& values) {
  const std::size_t q = ballots.categories;
  if ((metric == Metric::Interval || metric == Metric::Ratio) && values.size() != q) {
    throw std::invalid_argument("a number for each category is needed");
  }
  const auto margins = margins_of(coincidences(ballots), q);
  std::vector<double> distances(q * q);
  for (std::size_t c = 0; c < q; ++c) {
    for (std::size_t k = 0; k < q; ++k) {
      distances[c * q + k] = squared_difference(c, k, metric, margins, values);
    }
  }
  return krippendorff_alpha(ballots, distances);
}

std::optional<double> krippendorff_alpha(const Ballots& ballots, const std::vector<double>& distances) {
  const std::size_t q = ballots.categories;
  if (distances.size() != q * q) {
    throw std::invalid_argument("distances of another scale");
  }
  const auto pairs = coincidences(ballots);
  const auto margins = margins_of(pairs, q);
  const double n = std::accumulate(margins.begin(), margins.end(), 0.0);
  double observed = 0;
  double expected = 0;
  for (std::size_t c = 0; c < q; ++c) {
    for (std::size_t k = 0; k < q; ++k) {
      observed += pairs[c * q + k] * distances[c * q + k];
      expected += margins[c] * margins[k] * distances[c * q + k];
    }
  }
  if (n < 2 || expected <= 0) {
    return std::nullopt;
  }
  return 1 - (n - 1) * observed / expected;
}

std::optional<Gwet> gwet_ac(const Ballots& ballots, const std::vector<double>& weights) {
  const std::size_t q = ballots.categories;
  if (q < 2 || weights.size() != q * q) {
    throw std::invalid_argument("weights of another scale");
  }
  struct Thing {
    double readers = 0;
    double agreeing = 0; ///< Weighted share of its pairs of readers; 0 with one reader.
    const std::vector<double>* votes = nullptr;
  };
  std::vector<Thing> things;
  std::vector<double> shares(q);
  double paired = 0;
  Gwet result;
  for (const auto& votes : ballots.votes) {
    Thing thing{readers_of(votes), 0, &votes};
    if (thing.readers < 1) {
      continue;
    }
    for (std::size_t k = 0; k < q; ++k) {
      shares[k] += votes[k] / thing.readers;
      double alike = 0;
      for (std::size_t l = 0; l < q; ++l) {
        alike += weights[k * q + l] * votes[l];
      }
      thing.agreeing += votes[k] * (alike - 1);
    }
    if (thing.readers >= 2) {
      thing.agreeing /= thing.readers * (thing.readers - 1);
      result.agreement += thing.agreeing;
      paired += 1;
    } else {
      thing.agreeing = 0;
    }
    things.push_back(thing);
  }
  if (paired < 1) {
    return std::nullopt;
  }
  const double n = static_cast<double>(things.size());
  result.agreement /= paired;
  const double all_weights = std::accumulate(weights.begin(), weights.end(), 0.0);
  const double scale = all_weights / static_cast<double>(q * (q - 1));
  for (double& share : shares) {
    share /= n;
    result.chance += scale * share * (1 - share);
  }
  result.value = (result.agreement - result.chance) / (1 - result.chance);
  double squares = 0;
  for (const Thing& thing : things) {
    double chance = 0;
    for (std::size_t k = 0; k < q; ++k) {
      chance += scale * (*thing.votes)[k] / thing.readers * (1 - shares[k]);
    }
    const double own =
        thing.readers >= 2 ? n / paired * (thing.agreeing - result.chance) / (1 - result.chance) : 0;
    squares +=
        square(own - 2 * (1 - result.value) * (chance - result.chance) / (1 - result.chance) - result.value);
  }
  result.se = n > 1 ? std::sqrt(squares / (n * (n - 1))) : 0;
  return result;
}

} // namespace matula::statistics
