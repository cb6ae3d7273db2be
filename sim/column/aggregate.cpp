#include "sim/column/aggregate.hpp"

#include "sim/optics/nature.hpp"

#include <algorithm>
#include <cmath>

namespace matula::column {

namespace {

using matter::size_bins;
using Sizes = CollisionTable::Sizes;

constexpr double kelvin_at_0c = 273.15;
constexpr double m3_per_ml = 1e-6;
constexpr double negligible_share = 1e-12; // of a population's mass: a class below this is not worth a step
constexpr double step_tolerance = 0.01;    // share of the mass two orders may place differently in one step
constexpr double shortest_step_s = 1e-4;
constexpr double gel_rate_per_s = 0.5;     // locking of touching clusters, fitted here
constexpr double tearing_shear_per_s = 20; // gentler movement leaves a clot whole, fitted here
constexpr double tearing_strain = 3000;    // strain that tears 1/e of a clot apart, fitted here

/// Encounter rates of this portion per gram of the larger partner, 1/s/g: kernel / (mass of one cluster *
/// volume).
struct Rates {
  CollisionTable::Pairs pair;
  std::size_t first = 0; ///< Classes first..last take part.
  std::size_t last = 0;
  std::size_t filled = 0; ///< Classes below it have their rates.
};

/// How mass leaves its class: row i takes class j along into class i + 1, and is itself lifted there by u[i].
/// All 1/s.
struct Flow {
  CollisionTable::Pairs capture;
  Sizes lift{};
};

/// Fills in the rates of classes up to the last that takes part: most grains are small, and few classes
/// matter.
void fill_rates(Rates& rates, const matter::ParticleKind& kind, const CollisionTable& table,
                const Encounter& e) {
  if (rates.filled > rates.last) {
    return;
  }
  const double brownian = (e.temperature_c + kelvin_at_0c) / e.viscosity_pa_s;
  const double g = e.shear_per_s;
  const double shear = g > 0 ? g * std::pow(e.viscosity_pa_s * g, -curved_exponent) : 0.0;
  const double settling = 1.0 / e.viscosity_pa_s;
  const double slide_m = kind.contact_size_m / std::sqrt(std::max(g, 1e-12));
  for (std::size_t i = rates.filled; i <= rates.last; ++i) {
    const double per_gram = e.sticking / (table.mass_g[i] * e.volume_ml * m3_per_ml);
    const double relative = table.radius_m[i] / slide_m;
    const double b = brownian * per_gram;
    const double s = shear * per_gram / (1.0 + relative * relative * relative * relative);
    const double d = settling * per_gram;
    for (std::size_t j = 0; j <= i; ++j) {
      rates.pair[i][j] = b * table.brownian[i][j] + s * table.shear[i][j] + d * table.settling[i][j];
    }
  }
  rates.filled = rates.last + 1;
}

void fill_flow(Flow& flow, const Rates& rates, const Sizes& mass) {
  for (std::size_t i = rates.first; i <= rates.last; ++i) {
    double lift = 0;
    for (std::size_t j = rates.first; j < i; ++j) {
      flow.capture[i][j] = rates.pair[i][j] * mass[i];
      lift += rates.pair[i][j] * mass[j];
    }
    flow.capture[i][i] = rates.pair[i][i] * mass[i];
    flow.lift[i] = lift;
  }
}

/// One implicit sweep from the smallest class up: every flow goes to a larger class, so the system is
/// triangular. `weight` scales the flow out of a class (the second stage weighs by the first stage's mass).
void sweep(Sizes& out, const Sizes& mass, const Flow& flow, const Rates& rates, double seconds) {
  const std::size_t top = std::min(rates.last + 1, size_bins - 1);
  Sizes loss{};
  for (std::size_t i = rates.first; i <= rates.last; ++i) {
    for (std::size_t j = rates.first; j <= i; ++j) {
      loss[j] += flow.capture[i][j];
    }
    loss[i] += flow.lift[i];
  }
  const bool full = rates.last == size_bins - 1;
  if (full) {
    loss[size_bins - 1] = 0; // the largest class has nowhere to go
  }
  for (std::size_t b = rates.first; b <= top; ++b) {
    double gain = 0;
    if (b > rates.first) {
      const std::size_t i = b - 1;
      for (std::size_t j = rates.first; j <= i; ++j) {
        gain += flow.capture[i][j] * out[j];
      }
      gain += flow.lift[i] * out[i];
    }
    if (full && b == size_bins - 1) {
      for (std::size_t j = rates.first; j < b; ++j) {
        gain += flow.capture[b][j] * out[j];
      }
    }
    out[b] = (mass[b] + seconds * gain) / (1.0 + seconds * loss[b]);
  }
}

/// Averages the flows at the start and at the first answer, weighed so that the sweep keeps mass and sign:
/// the second order modified Patankar scheme of Burchard, Deleersnijder and Meister 2003.
void blend(Flow& start, const Flow& first, const Sizes& mass, const Sizes& predicted, const Rates& rates) {
  Sizes ratio{};
  for (std::size_t j = rates.first; j <= rates.last; ++j) {
    ratio[j] = predicted[j] > 0 ? mass[j] / predicted[j] : 0.0;
  }
  for (std::size_t i = rates.first; i <= rates.last; ++i) {
    for (std::size_t j = rates.first; j <= i; ++j) {
      start.capture[i][j] = 0.5 * (start.capture[i][j] * ratio[j] + first.capture[i][j]);
    }
    start.lift[i] = 0.5 * (start.lift[i] * ratio[i] + first.lift[i]);
  }
}

/// Finds the classes that hold mass, and a few larger ones the step may reach; false when none does.
bool find_range(Rates& rates, const Sizes& mass, double total) {
  constexpr std::size_t reach = 4;
  const double floor_g = total * negligible_share;
  std::size_t first = 0;
  while (first < size_bins && mass[first] <= floor_g) {
    ++first;
  }
  if (first == size_bins) {
    return false;
  }
  std::size_t last = size_bins - 1;
  while (mass[last] <= floor_g) {
    --last;
  }
  rates.first = first;
  rates.last = std::min(last + reach, size_bins - 1);
  return true;
}

/// Breaks clusters larger than the shear lets live into halves: an implicit sweep from the largest class
/// down.
void break_up(Sizes& mass, const matter::ParticleKind& kind, const CollisionTable& table, double shear_per_s,
              double seconds) {
  const double survives_m = kind.breakage_size_m / std::sqrt(std::max(shear_per_s, 1e-12));
  double from_above = 0;
  for (std::size_t i = size_bins; i-- > 1;) {
    const double relative = table.radius_m[i] / survives_m;
    const double rate = relative > 1 ? shear_per_s * (relative * relative - 1) : 0.0;
    const double before = mass[i] + from_above;
    mass[i] = before / (1.0 + seconds * rate);
    from_above = before - mass[i];
  }
  mass[0] += from_above;
}

std::size_t largest_class_below(const CollisionTable& table, double radius_m) {
  std::size_t i = size_bins - 1;
  while (i > 0 && table.radius_m[i] > radius_m) {
    --i;
  }
  return i;
}

double sum(const Sizes& mass) {
  double total = 0;
  for (const double m : mass) {
    total += m;
  }
  return total;
}

/// One second-order step; returns the share of the mass that the two orders place differently.
double try_step(Sizes& out, const Sizes& mass, const Rates& rates, double total, double seconds) {
  Flow start;
  Flow later;
  Sizes predicted = mass;
  fill_flow(start, rates, mass);
  sweep(predicted, mass, start, rates, seconds);
  fill_flow(later, rates, predicted);
  blend(start, later, mass, predicted, rates);
  out = mass;
  sweep(out, mass, start, rates, seconds);
  double moved = 0;
  for (std::size_t i = 0; i < size_bins; ++i) {
    moved += std::abs(out[i] - predicted[i]);
  }
  return 0.5 * moved / total;
}

} // namespace

double sticking_at(const matter::ParticleKind& kind, double ph, double temperature_c) {
  constexpr double boiling_k = kelvin_at_0c + 100;
  double sticking = 1;
  if (kind.sticking_ph_width > 0) {
    const double away = (ph - kind.sticking_ph_centre) / kind.sticking_ph_width;
    sticking = std::pow(10.0, -away * away);
  }
  if (kind.sticking_activation_kj_per_mol > 0) {
    const double inverse = 1 / (temperature_c + kelvin_at_0c) - 1 / boiling_k;
    sticking *= std::exp(-kind.sticking_activation_kj_per_mol / nature::gas_constant_kj_per_mol_k * inverse);
  }
  return std::min(sticking, 1.0);
}

void aggregate(matter::Population& population, const matter::ParticleKind& kind, const CollisionTable& table,
               const Encounter& encounter, double seconds) {
  Sizes& mass = population.grams;
  const double total = sum(mass);
  if (total <= 0 || encounter.volume_ml <= 0 || !table.sticks) {
    return;
  }
  Rates rates;
  Sizes next{};
  double left_s = seconds;
  double step_s = seconds;
  while (left_s > 0 && find_range(rates, mass, total)) {
    fill_rates(rates, kind, table, encounter);
    step_s = std::min(step_s, left_s);
    const double error = try_step(next, mass, rates, total, step_s);
    const double fitting = 0.9 * std::sqrt(step_tolerance / std::max(error, 1e-12));
    if (error > step_tolerance && step_s > shortest_step_s) {
      step_s = std::max(step_s * std::max(0.2, fitting), shortest_step_s);
      continue;
    }
    mass = next;
    break_up(mass, kind, table, encounter.shear_per_s, step_s);
    left_s -= step_s;
    step_s *= std::min(3.0, std::max(fitting, 1.0));
  }
}

double cluster_volume_fraction(const matter::Population& population, const matter::ParticleKind& kind,
                               const CollisionTable& table, double volume_ml) {
  if (volume_ml <= 0 || population.empty()) {
    return 0;
  }
  double loose_g = 0;
  for (std::size_t i = 0; i < size_bins; ++i) {
    loose_g += population.grams[i] / table.packing[i];
  }
  loose_g += population.clot_g / table.packing[size_bins - 1];
  constexpr double kg_m3_per_g_ml = 1000.0;
  return loose_g / (kind.solid_density_kg_m3 / kg_m3_per_g_ml) / volume_ml;
}

void gel(matter::Population& population, const matter::ParticleKind& kind, const CollisionTable& table,
         const Encounter& encounter, double seconds) {
  if (kind.gel_volume_fraction >= 1) {
    return;
  }
  const double crowding =
      cluster_volume_fraction(population, kind, table, encounter.volume_ml) / kind.gel_volume_fraction;
  const double survives_m = kind.breakage_size_m / std::sqrt(std::max(encounter.shear_per_s, 1e-12));
  const std::size_t piece = largest_class_below(table, survives_m);
  if (crowding > 1) {
    const double lock = 1.0 - std::exp(-gel_rate_per_s * (crowding - 1) * encounter.sticking * seconds);
    for (double& grams : population.grams) {
      const double locked = lock * grams;
      grams -= locked;
      population.clot_g += locked;
    }
  }
  if (population.clot_g > 0 && encounter.shear_per_s > tearing_shear_per_s) {
    const double torn =
        population.clot_g * (1.0 - std::exp(-seconds * encounter.shear_per_s / tearing_strain));
    population.clot_g -= torn;
    population.grams[piece] += torn;
  }
}

} // namespace matula::column
