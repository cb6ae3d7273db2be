#include "sim/bench/bench.hpp"

#include "sim/bench/keeping.hpp"
#include "sim/bench/life.hpp"

#include <algorithm>
#include <stdexcept>

namespace matula::bench {

namespace {

const column::VesselShape& shape(const Setup& setup, const char* key) {
  const auto found = setup.shapes.find(key);
  if (found == setup.shapes.end()) {
    throw std::invalid_argument(std::string("the bench needs the vessel shape '") + key + "'");
  }
  return found->second;
}

Vessel filled(const Setup& setup, const char* shape_key, const matter::Mixture& liquid) {
  const matter::Catalogue& catalogue = *setup.chemistry->catalogue;
  Vessel vessel;
  vessel.column = column::empty_column(shape(setup, shape_key), catalogue);
  if (!liquid.empty()) {
    column::pour_in(vessel.column, liquid, true, catalogue);
  }
  return vessel;
}

Vessel cup(const Setup& setup) {
  Vessel vessel =
      filled(setup, "specimen_cup", specimen::make_liquid(setup.specimen, *setup.chemistry->catalogue));
  ageing::Gas gas;
  keep(vessel.column, gas, setup);
  return vessel;
}

} // namespace

State begin(const Setup& setup) {
  const matter::Catalogue& catalogue = *setup.chemistry->catalogue;
  const matter::Mixture nothing = matter::empty_mixture(catalogue);
  matter::Mixture water = nothing;
  water.volume_ml = setup.tools.water_bottle_ml;
  water.temperature_c = setup.room_c;
  State state;
  state.bath_c = setup.room_c;
  state.bath_target_c = setup.room_c;
  state.vessels["specimen"] = cup(setup);
  state.vessels["water"] = filled(setup, "urinometer_jar", water);
  state.vessels["jar"] = filled(setup, "urinometer_jar", nothing);
  for (int i = 1; i <= setup.tube_count; ++i) {
    state.vessels["tube-" + std::to_string(i)] = filled(setup, "test_tube", nothing);
  }
  if (std::find(setup.reagents_out.begin(), setup.reagents_out.end(), "esbach") != setup.reagents_out.end()) {
    state.vessels["esbach"] = filled(setup, "esbach_tube", nothing);
  }
  for (auto& [name, vessel] : state.vessels) {
    disturbed(state, setup, vessel);
  }
  return state;
}

} // namespace matula::bench
