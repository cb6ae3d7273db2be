#include "sim/bench/powder.hpp"

#include "sim/appearance/solid_look.hpp"
#include "sim/bench/life.hpp"
#include "sim/bench/pour.hpp"
#include "sim/bench/words.hpp"
#include "sim/matter/surface.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace matula::bench {

namespace {

constexpr double mg_per_g = 1000;

/// Size class of the sulphur's grains.
std::size_t bin_of(const matter::ParticleKind& kind, double radius_m) {
  std::size_t bin = 0;
  while (bin + 1 < matter::size_bins && kind.bin_radius_m(bin) < radius_m) {
    ++bin;
  }
  return bin;
}

void lay_down(const Setup& setup, Vessel& vessel, double sunk_mg) {
  const matter::Catalogue& catalogue = *setup.chemistry->catalogue;
  const auto id = catalogue.find_particle("sulphur");
  if (sunk_mg <= 0 || !id || vessel.column.layers.empty()) {
    return;
  }
  constexpr double m_per_mm = 1e-3;
  const std::size_t bin = bin_of(catalogue.particles[*id], setup.sulphur.grain_radius_mm * m_per_mm);
  // Grains of a tenth of a millimetre fall through a tube within seconds; they start at the surface.
  vessel.column.layers.back().populations.of(*id).grams[bin] += sunk_mg / mg_per_g;
}

double tension_mn_m(const Setup& setup, const Vessel& vessel) {
  const column::Column& column = vessel.column;
  return matter::surface_tension_mn_m(column.layers.empty() ? column.sediment : column.layers.back(),
                                      *setup.chemistry->catalogue);
}

} // namespace

Outcome sprinkle(State& state, const Setup& setup, const SprinkleSulphur& action) {
  Vessel* vessel = find(state, action.vessel);
  if (vessel == nullptr) {
    return refused(no_such_vessel(action.vessel));
  }
  if (vessel->column.layers.empty()) {
    return refused("There is no surface in " + spoken(action.vessel) + " to strew sulphur on.");
  }
  if (vessel->place == Place::Flame) {
    return refused("Sulphur burns: take " + spoken(action.vessel) + " out of the flame first.");
  }
  if (!setup.chemistry->catalogue->find_particle("sulphur")) {
    return refused("There is no sulphur on this bench.");
  }
  catch_up(state, setup, action.vessel, *vessel);
  instrument::Strewn fresh = instrument::strew(setup.sulphur);
  if (vessel->sulphur) {
    for (std::size_t i = 0; i < instrument::wetting_classes; ++i) {
      fresh.floating_mg[i] += vessel->sulphur->floating_mg[i];
    }
    fresh.strewn_mg += vessel->sulphur->strewn_mg;
  }
  fresh.at_s = state.time_s;
  vessel->sulphur = fresh;
  lay_down(setup, *vessel,
           instrument::sink(*vessel->sulphur, setup.sulphur, tension_mn_m(setup, *vessel), 0));
  vessel->trace.additions.push_back({state.time_s, "sulphur", 0, false});
  disturbed(state, setup, *vessel);
  return {};
}

Outcome tap(State& state, const Setup& setup, const Tap& action) {
  Vessel* vessel = find(state, action.vessel);
  if (vessel == nullptr) {
    return refused(no_such_vessel(action.vessel));
  }
  Outcome outcome;
  outcome.caution = touch(state, *vessel, action.vessel);
  catch_up(state, setup, action.vessel, *vessel);
  if (vessel->sulphur && !vessel->column.layers.empty()) {
    lay_down(setup, *vessel,
             instrument::sink(*vessel->sulphur, setup.sulphur, tension_mn_m(setup, *vessel), 0,
                              setup.sulphur.tap_g));
  }
  disturbed(state, setup, *vessel);
  return outcome;
}

void live_powder(const Setup& setup, Vessel& vessel, double seconds) {
  if (vessel.sulphur && !vessel.column.layers.empty()) {
    lay_down(setup, vessel,
             instrument::sink(*vessel.sulphur, setup.sulphur, tension_mn_m(setup, vessel), seconds));
  }
}

appearance::Powder look_at_powder(const Setup& setup, const Vessel& vessel, const appearance::View& view) {
  appearance::Powder powder;
  const instrument::Sulphur& sulphur = setup.sulphur;
  const double floating_mg = vessel.sulphur->floating();
  powder.floating_share = vessel.sulphur->strewn_mg > 0 ? floating_mg / vessel.sulphur->strewn_mg : 0;
  powder.grain_mm = 2 * sulphur.grain_radius_mm;
  const double radius_mm = sulphur.grain_radius_mm;
  constexpr double mg_per_mm3_per_kg_m3 = 1e-3;
  const double grain_mg = 4.0 / 3 * std::numbers::pi * radius_mm * radius_mm * radius_mm *
                          sulphur.density_kg_m3 * mg_per_mm3_per_kg_m3;
  const double wide_mm = vessel.column.shape.inner_diameter_mm / 2;
  // Grains fall where they fall: some on others.
  const double layers = floating_mg / grain_mg * radius_mm * radius_mm / (wide_mm * wide_mm);
  powder.cover = 1 - std::exp(-layers);
  const matter::Catalogue& catalogue = *setup.chemistry->catalogue;
  if (const auto id = catalogue.find_particle("sulphur")) {
    matter::Mixture heap = matter::empty_mixture(catalogue);
    heap.volume_ml = 1;
    heap.populations.of(*id).grams[bin_of(catalogue.particles[*id], radius_mm * 1e-3)] = 1;
    const appearance::CylinderLookup lookup(setup.optics->cylinder);
    powder.colour = appearance::packed_colour(heap, 2 * radius_mm, {catalogue, *setup.optics, lookup, view})
                        .on(view.card);
  }
  return powder;
}

} // namespace matula::bench
