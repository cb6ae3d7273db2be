#include "sim/column/column.hpp"

#include "sim/column/aggregate.hpp"
#include "sim/column/heat.hpp"
#include "sim/column/layers.hpp"
#include "sim/column/mix.hpp"
#include "sim/column/settle.hpp"
#include "sim/matter/density.hpp"
#include "sim/matter/ph.hpp"

#include <algorithm>
#include <cmath>

namespace matula::column {

namespace {

constexpr double longest_step_s =
    0.5; // splitting of transport and change: halving moves results by under 2 %
constexpr double boiling_shear_per_s = 140; // a rolling boil in a tube; fitted here
constexpr double same_liquid = 1e-6;        // relative difference below which two layers share one pH
constexpr double pa_s_per_mpa_s = 1e-3;

bool same_dissolved(const matter::Mixture& a, const matter::Mixture& b) {
  for (std::size_t s = 0; s < a.mmol.size(); ++s) {
    const double here = a.mmol[s] * b.volume_ml;
    const double there = b.mmol[s] * a.volume_ml;
    if (std::abs(here - there) > same_liquid * (std::abs(here) + std::abs(there))) {
      return false;
    }
  }
  return true;
}

/// pH by layer, worked out once for neighbours that hold the same liquid and only where something asks for
/// it.
class LayerPh {
public:
  explicit LayerPh(const matter::Catalogue& catalogue) : catalogue_(catalogue) {}

  double of(const matter::Mixture& layer) {
    if (last_ == nullptr || !same_dissolved(*last_, layer)) {
      ph_ = matter::ph(layer, catalogue_);
      last_ = &layer;
    }
    return ph_;
  }

private:
  const matter::Catalogue& catalogue_;
  const matter::Mixture* last_ = nullptr;
  double ph_ = 7;
};

void grow_clusters(matter::Mixture& layer, const Chemistry& chemistry, double shear_per_s, LayerPh& ph,
                   double seconds) {
  Encounter encounter;
  encounter.volume_ml = layer.volume_ml;
  encounter.temperature_c = layer.temperature_c;
  encounter.viscosity_pa_s = matter::water_viscosity_mpa_s(layer.temperature_c) * pa_s_per_mpa_s;
  encounter.shear_per_s = shear_per_s;
  for (std::size_t k = 0; k < layer.populations.size(); ++k) {
    const matter::ParticleKind& kind = chemistry.catalogue->particles[k];
    if (!chemistry.collisions[k].sticks || layer.populations[k].total_g() <= 0) {
      continue;
    }
    const double layer_ph = kind.sticking_ph_width > 0 ? ph.of(layer) : 7.0;
    encounter.sticking = sticking_at(kind, layer_ph, layer.temperature_c);
    aggregate(layer.populations[k], kind, chemistry.collisions[k], encounter, seconds);
    gel(layer.populations[k], kind, chemistry.collisions[k], encounter, seconds);
  }
}

void step(Column& column, const Chemistry& chemistry, const Surroundings& surroundings, double seconds) {
  const std::vector<double> vigour = heat(column, surroundings, extents(column), seconds);
  if (column.layers.empty()) {
    return;
  }
  std::vector<double> shear_per_s;
  for (const double share : vigour) {
    shear_per_s.push_back(std::max(surroundings.shear_per_s, boiling_shear_per_s * share));
  }
  mix(column, *chemistry.catalogue, extents(column), shear_per_s, surroundings.inverting, seconds);
  LayerPh ph(*chemistry.catalogue);
  for (std::size_t i = 0; i < column.layers.size(); ++i) {
    reaction::react(column.layers[i], chemistry, *chemistry.catalogue, seconds, shear_per_s[i]);
  }
  if (column.sediment.volume_ml > 0) {
    reaction::react(column.sediment, chemistry, *chemistry.catalogue, seconds, surroundings.shear_per_s);
  }
  for (std::size_t i = 0; i < column.layers.size(); ++i) {
    grow_clusters(column.layers[i], chemistry, shear_per_s[i], ph, seconds);
  }
  settle(column, chemistry, extents(column), seconds);
}

} // namespace

void prepare(Chemistry& chemistry) {
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
  const double steps = std::ceil(seconds / longest_step_s);
  for (double done = 0; done < steps && !column.layers.empty(); ++done) {
    step(column, chemistry, surroundings, seconds / steps);
    refine(column);
  }
}

} // namespace matula::column
