#include "sim/column/pace.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>

namespace matula::column {

namespace {

/// How long steps may be, and how much of a kind's mass may change its class or fall out in one of them.
struct Patience {
  double first_s;
  double last_s;
  double little; ///< The next may be longer.
  double much;   ///< The next must be shorter.
};
constexpr Patience watched{1.5, 30, 0.005, 0.02};
constexpr Patience alone{30, 600, 0.03, 0.1}; // a cup left for hours
constexpr double little_change_k = 0.2;
constexpr double nothing_g = 1e-9;
constexpr double noticed_g_per_ml = 1e-5; // 1 mg/dL: of less, an eye and a law notice less
constexpr double noticed_share = 1e-3;    // of all solids there: less is lost in the cloud of the others
constexpr double dissolving_weight = 0.1; // Dissolving is exact in its step: it may go further than growing.
constexpr double quiet_share = 0.2;       // of what is little: then the next step may be much longer

constexpr std::size_t both = 2 * matter::size_bins; // in suspension and in the bed

void add(const matter::Population& population, double* grams) {
  for (std::size_t i = 0; i < matter::size_bins; ++i) {
    grams[i] += population.grams[i];
  }
}

} // namespace

Pace::Solids Pace::solids(const Column& column) {
  Solids found;
  const auto gather = [&found](const matter::Mixture& part, std::size_t offset) {
    for (const auto& [kind, population] : part.populations.present()) {
      if (population.empty()) {
        continue;
      }
      const auto at = std::lower_bound(found.kinds.begin(), found.kinds.end(), kind);
      const auto first = static_cast<std::size_t>(at - found.kinds.begin()) * both;
      if (at == found.kinds.end() || *at != kind) {
        found.kinds.insert(at, kind);
        found.grams.insert(found.grams.begin() + static_cast<std::ptrdiff_t>(first), both, 0.0);
      }
      add(population, found.grams.data() + first + offset);
    }
  };
  for (const matter::Mixture& layer : column.layers) {
    gather(layer, 0);
  }
  gather(column.sediment, matter::size_bins);
  return found;
}

namespace {

struct Sums {
  double all = 0;
  double suspended = 0;
};

Sums sums(const double* grams) {
  Sums s;
  for (std::size_t i = 0; i < matter::size_bins; ++i) {
    s.suspended += grams[i];
    s.all += grams[i] + grams[matter::size_bins + i];
  }
  return s;
}

/// How much one kind changed: its classes, its bed, its mass; both beginning with those in suspension.
double changed(const double* was, const double* now, double noticed_g) {
  const Sums before = sums(was);
  const Sums after = sums(now);
  if (after.all <= nothing_g) {
    return 0;
  }
  if (before.all <= nothing_g) {
    return std::min(1.0, after.all / noticed_g);
  }
  double regrouped = 0;
  for (std::size_t i = 0; i < matter::size_bins; ++i) {
    regrouped += std::abs((now[i] + now[matter::size_bins + i]) / after.all -
                          (was[i] + was[matter::size_bins + i]) / before.all);
  }
  const double fallen = std::abs(after.suspended / after.all - before.suspended / before.all);
  const double grown = std::max(0.0, 1 - before.all / after.all);
  const double dissolved = std::max(0.0, 1 - after.all / before.all);
  const double most = std::max({0.5 * regrouped + grown, fallen, dissolving_weight * dissolved});
  return most * std::min(1.0, after.all / noticed_g);
}

} // namespace

/// Of the kind that changed most.
double Pace::moved_share(const Solids& before, const Solids& after, double volume_ml) {
  constexpr std::array<double, both> none{};
  const double solids_g = std::accumulate(after.grams.begin(), after.grams.end(), 0.0);
  const double noticed_g = std::max(noticed_g_per_ml * volume_ml, noticed_share * solids_g);
  double most = 0;
  for (std::size_t k = 0; k < after.kinds.size(); ++k) {
    const auto same = std::lower_bound(before.kinds.begin(), before.kinds.end(), after.kinds[k]);
    const bool known = same != before.kinds.end() && *same == after.kinds[k];
    const double* was =
        known ? before.grams.data() + static_cast<std::size_t>(same - before.kinds.begin()) * both
              : none.data();
    most = std::max(most, changed(was, after.grams.data() + k * both, noticed_g));
  }
  return most;
}

double Pace::longest_s(const Column& column) {
  if (!solids_) {
    solids_ = solids(column);
    temperature_c_ = mean_temperature_c(column);
  }
  const Patience& patience = unwatched_ ? alone : watched;
  return std::clamp(column.calm_step_s, patience.first_s, patience.last_s);
}

void Pace::after(Column& column, double step_s) {
  const Patience& patience = unwatched_ ? alone : watched;
  const double longest_s = std::clamp(column.calm_step_s, patience.first_s, patience.last_s);
  Solids now = solids(column);
  const double now_c = mean_temperature_c(column);
  const double moved = solids_ ? moved_share(*solids_, now, column.volume_ml()) : 1;
  const double warmed_k = std::abs(now_c - temperature_c_);
  solids_ = std::move(now);
  temperature_c_ = now_c;
  column.calm_step_s = longest_s;
  if (moved > patience.much) {
    column.calm_step_s = std::max(0.5 * longest_s, patience.first_s);
  } else if (moved < patience.little && warmed_k < little_change_k && step_s > 0.5 * longest_s) {
    const bool quiet = moved < quiet_share * patience.little && warmed_k < quiet_share * little_change_k;
    column.calm_step_s = std::min((quiet ? 4 : 2) * longest_s, patience.last_s);
  }
}

void Pace::forget(Column& column) {
  solids_.reset();
  column.calm_step_s = 0;
}

} // namespace matula::column
