#include "engine/sitting/setup.hpp"

#include "engine/assets/world.hpp"
#include "engine/scenario/scenario.hpp"

namespace matula::sitting {

bench::Setup make_setup(const assets::World& world, const scenario::Scenario& scenario) {
  bench::Setup setup;
  setup.chemistry = &world.chemistry;
  setup.optics = &world.optics;
  setup.ageing = &world.ageing;
  setup.shapes = world.shapes;
  setup.urinometer = world.urinometer;
  setup.urinometer.zero_error = scenario.urinometer_zero_error;
  setup.urinometer.calibration_c = scenario.rules.calibration_c;
  setup.refractometer = world.refractometer;
  setup.refractometer.zero_error = scenario.refractometer_zero_error;
  setup.photometer = world.photometer;
  setup.sulphur = world.sulphur;
  setup.tools = world.tools;
  setup.papers = &world.papers;
  setup.cards = &world.cards;
  setup.specimen = scenario.specimen;
  setup.reagents_out = scenario.reagents_out;
  setup.bottle_age_days = scenario.bottle_age_days;
  setup.bottle_decays = world.bottle_decays;
  setup.room_c = scenario.room_c;
  setup.seed = scenario.seed;
  return setup;
}

} // namespace matula::sitting
