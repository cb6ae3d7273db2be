#pragma once

#include "engine/assets/world.hpp"
#include "sim/bench/bench.hpp"
#include "sim/bench/scene.hpp"

#include <stdexcept>
#include <string>

namespace matula::test {

/// The shipped world, loaded once.
inline const assets::World& world() {
  static const auto loaded = assets::load(std::string(MATULA_SOURCE_DIR) + "/assets");
  if (!loaded) {
    throw std::runtime_error(loaded.error().front().file + ": " + loaded.error().front().found);
  }
  return **loaded;
}

/// A concentrated but healthy urine on a warm bench.
inline bench::Setup setup() {
  bench::Setup s;
  s.chemistry = &world().chemistry;
  s.optics = &world().optics;
  s.shapes = world().shapes;
  s.urinometer = world().urinometer;
  s.refractometer = world().refractometer;
  s.photometer = world().photometer;
  s.sulphur = world().sulphur;
  s.tools = world().tools;
  s.reagents_out = {"acetic_acid_10", "ssa_3", "benedict"};
  s.specimen.volume_ml = 60;
  s.specimen.temperature_c = 22;
  s.specimen.mmol_per_l = {{"sodium", 120},   {"potassium", 55},     {"urea", 300},  {"creatinine", 10},
                           {"phosphate", 22}, {"sulphate", 18},      {"calcium", 3}, {"magnesium", 3},
                           {"ammonium", 35},  {"other_organics", 24}};
  s.seed = 7;
  return s;
}

} // namespace matula::test
