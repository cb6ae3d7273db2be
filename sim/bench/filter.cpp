#include "sim/bench/filter.hpp"

#include "sim/bench/hazards.hpp"
#include "sim/bench/life.hpp"
#include "sim/bench/pour.hpp"
#include "sim/bench/words.hpp"

#include <cmath>

namespace matula::bench {

namespace {

constexpr double um_per_m = 1e6;

/// Moves the solids the paper stops out of the liquid.
void strain(matter::Mixture& liquid, matter::Mixture& held, const Setup& setup) {
  for (auto& [id, passing] : liquid.populations.present()) {
    if (passing.empty()) {
      continue;
    }
    matter::Population& stopped = held.populations.of(id);
    const matter::ParticleKind& kind = setup.chemistry->catalogue->particles[id];
    for (std::size_t bin = 0; bin < matter::size_bins; ++bin) {
      const double share = held_back(setup.tools, 2 * kind.bin_radius_m(bin) * um_per_m);
      const double grams = share * passing.grams[bin];
      stopped.grams[bin] += grams;
      passing.grams[bin] -= grams;
    }
    stopped.clot_g += passing.clot_g;
    passing.clot_g = 0;
  }
}

std::string cannot_filter(const State& state, const Filter& action, const Vessel& from, const Vessel& to) {
  if (&from == &to) {
    return "Filter from one vessel into another.";
  }
  if (from.place == Place::Flame && state.flame_on) {
    return "Take " + spoken(action.from) + " out of the flame first.";
  }
  const std::string why = nothing_to_pour(state, action.from, from, action.volume_ml);
  return why.empty() ? no_room(action.to, to, action.volume_ml) : why;
}

} // namespace

double held_back(const Tools& tools, double diameter_um) {
  const double wide = std::pow(diameter_um / tools.paper_pore_um, tools.paper_sharpness);
  return wide / (1 + wide);
}

Outcome filter(State& state, const Setup& setup, const Filter& action) {
  Vessel* from = find(state, action.from);
  Vessel* to = find(state, action.to);
  if (from == nullptr || to == nullptr) {
    return refused(no_such_vessel(from == nullptr ? action.from : action.to));
  }
  if (const std::string why = cannot_filter(state, action, *from, *to); !why.empty()) {
    return refused(why);
  }
  const matter::Catalogue& catalogue = *setup.chemistry->catalogue;
  const bool fresh = action.fresh_paper || !state.filter_residue;
  const double soaked_ml = fresh ? setup.tools.paper_holds_ml : 0;
  if (action.volume_ml <= soaked_ml) {
    return refused("The paper would soak it all up: filter more than " + spoken_ml(soaked_ml) + ".");
  }
  Outcome outcome;
  outcome.caution = touch(state, *from, action.from);
  catch_up(state, setup, action.from, *from);
  matter::Mixture liquid = column::draw_out(from->column, action.volume_ml, catalogue);
  disturbed(state, setup, *from);
  PaperResidue residue =
      fresh ? PaperResidue{matter::empty_mixture(catalogue), "", 0, {}} : *state.filter_residue;
  strain(liquid, residue.held, setup);
  matter::merge(residue.held, matter::draw(liquid, soaked_ml));
  merge_waste(*to, from->waste);
  add(state, setup, action.to, *to, liquid, {state.time_s, action.from, liquid.volume_ml, true});
  residue.from = action.from;
  residue.filtered_s = state.time_s;
  residue.source = from->trace;
  state.filter_residue = residue;
  advance(state, setup, action.volume_ml / setup.tools.paper_ml_per_s);
  return outcome;
}

} // namespace matula::bench
