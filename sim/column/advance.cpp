#include "sim/column/column.hpp"

#include "sim/column/aggregate.hpp"
#include "sim/column/border.hpp"
#include "sim/column/heat.hpp"
#include "sim/column/layers.hpp"
#include "sim/column/mix.hpp"
#include "sim/column/pace.hpp"
#include "sim/column/portions.hpp"
#include "sim/column/settle.hpp"
#include "sim/matter/density.hpp"
#include "sim/matter/ph.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

namespace matula::column {

namespace {

// Splitting of transport and change; halving either moves grain sizes by less than 5 %.
constexpr double stirred_step_s = 0.5;
constexpr double resting_shear_per_s = 1;
constexpr double near_the_bath_k = 20;      // closer than this, a bath warms slowly enough for the long step
constexpr double boiling_shear_per_s = 140; // a rolling boil in a tube; fitted here
constexpr double neutral_ph = 7;
constexpr double pa_s_per_mpa_s = 1e-3;

/// Share of encounters that stick although a dissolved substance covers the grains.
double past_guard(const matter::Mixture& layer, const matter::ParticleKind& kind) {
  if (kind.guard_species == matter::no_guard) {
    return 1;
  }
  return std::pow(1 + layer.molar(kind.guard_species) / kind.guard_half_mol_per_l, -kind.guard_power);
}

/// `near`: an acidity to search the pH from; left as the one found where a kind asks for it.
void grow_clusters(matter::Mixture& layer, const Chemistry& chemistry, double shear_per_s, double seconds,
                   std::optional<matter::Acidity>& near) {
  Encounter encounter;
  encounter.volume_ml = layer.volume_ml;
  encounter.temperature_c = layer.temperature_c;
  encounter.viscosity_pa_s = matter::water_viscosity_mpa_s(layer.temperature_c) * pa_s_per_mpa_s;
  encounter.shear_per_s = shear_per_s;
  std::optional<double> ph; // worked out only where a kind asks for it
  for (auto& [k, population] : layer.populations.present()) {
    const matter::ParticleKind& kind = chemistry.catalogue->particles[k];
    if (!chemistry.collisions[k].sticks || population.empty()) {
      continue;
    }
    if (kind.sticking_ph_width > 0 && !ph) {
      near = near ? matter::acidity(layer, *chemistry.catalogue, *near)
                  : matter::acidity(layer, *chemistry.catalogue);
      ph = near->ph;
    }
    encounter.sticking =
        sticking_at(kind, ph.value_or(neutral_ph), layer.temperature_c) * past_guard(layer, kind);
    aggregate(population, kind, chemistry.collisions[k], encounter, seconds);
    gel(population, kind, chemistry.collisions[k], encounter, seconds);
  }
}

/// Kept from step to step: the bed mostly holds other things than the liquid.
struct Memory {
  reaction::Memory liquid;
  reaction::Memory bed;
};

/// What happens inside one well-mixed portion.
void change(matter::Mixture& portion, const Chemistry& chemistry, double shear_per_s,
            const reaction::Exposure& exposure, double seconds, reaction::Memory& memory) {
  reaction::react(portion, chemistry, *chemistry.catalogue, seconds, shear_per_s, exposure, memory);
  grow_clusters(portion, chemistry, shear_per_s, seconds, memory.near);
}

void step(Column& column, const Chemistry& chemistry, const Surroundings& surroundings, double seconds,
          Memory& memory) {
  const std::vector<double> vigour =
      heat(column, chemistry.catalogue->heavy, surroundings, extents(column), seconds);
  if (column.layers.empty()) {
    return;
  }
  std::vector<double> shear_per_s;
  shear_per_s.reserve(vigour.size());
  for (const double share : vigour) {
    shear_per_s.push_back(std::max(surroundings.shear_per_s, boiling_shear_per_s * share));
  }
  mix(column, *chemistry.catalogue, extents(column), shear_per_s, surroundings.inverting, seconds);
  cross_border(column, *chemistry.catalogue, shear_per_s.front(), surroundings.inverting, seconds);
  for (const Run& run : alike_runs(column.layers, shear_per_s)) {
    if (run.last == run.first + 1) {
      change(column.layers[run.first], chemistry, shear_per_s[run.first], surroundings.exposure, seconds,
             memory.liquid);
      continue;
    }
    matter::Mixture pooled = pool(column.layers, run);
    change(pooled, chemistry, shear_per_s[run.first], surroundings.exposure, seconds, memory.liquid);
    deal(column.layers, run, pooled);
  }
  if (column.sediment.volume_ml > 0) {
    reaction::react(column.sediment, chemistry, *chemistry.catalogue, seconds, surroundings.shear_per_s,
                    surroundings.exposure, memory.bed);
  }
  settle(column, chemistry, extents(column), shear_per_s, seconds, surroundings.gravity);
}

/// Nothing is heated fast, stirred or boiling.
bool at_rest(const Column& column, const Surroundings& around) {
  const bool bath = around.bath_c > no_bath_below_c;
  return around.flame_power_w <= 0 && !around.inverting && around.shear_per_s <= resting_shear_per_s &&
         column.boiling <= 0 &&
         (!bath || std::abs(around.bath_c - mean_temperature_c(column)) < near_the_bath_k);
}

} // namespace

void prepare(Chemistry& chemistry) {
  reaction::prepare(chemistry, *chemistry.catalogue);
  chemistry.collisions.clear();
  for (const matter::ParticleKind& kind : chemistry.catalogue->particles) {
    chemistry.collisions.push_back(collision_table(kind));
  }
}

void advance(Column& column, const Chemistry& chemistry, const Surroundings& surroundings, double seconds) {
  if (chemistry.collisions.size() != chemistry.catalogue->particles.size()) {
    Chemistry prepared = chemistry;
    prepare(prepared);
    advance(column, prepared, surroundings, seconds);
    return;
  }
  if (column.layers.empty() && column.heavy.volume_ml > 0) {
    warm_alone(column, surroundings, seconds);
  }
  double left_s = seconds;
  Pace pace(surroundings.unwatched);
  Memory memory;
  while (left_s > 0 && !column.layers.empty()) {
    const bool resting = at_rest(column, surroundings);
    const double longest_s = resting ? pace.longest_s(column) : stirred_step_s;
    const double step_s =
        left_s / std::ceil(left_s / longest_s); // equal steps, so that the last is no sliver
    step(column, chemistry, surroundings, step_s, memory);
    refine(column);
    if (resting) {
      pace.after(column, step_s);
    } else {
      pace.forget(column);
    }
    left_s = step_s < left_s ? left_s - step_s : 0;
  }
}

} // namespace matula::column
