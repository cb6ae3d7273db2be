#include "engine/practice/float_jar.hpp"

#include "engine/assets/world.hpp"
#include "engine/practice/draws.hpp"
#include "engine/practice/store.hpp"
#include "engine/scenario/scenario.hpp"
#include "engine/sitting/setup.hpp"

#include <cmath>
#include <stdexcept>

namespace matula::practice {

namespace {

constexpr double near_enough = 2e-5; // A fiftieth of a division.
constexpr int most_jars = 8;

/// `strength` times everything dissolved and coloured in plain urine.
FloatJar fill(const Store& store, const Unknown& unknown, double strength, double temperature_c) {
  scenario::Scenario scenario;
  scenario.key = "float";
  scenario.specimen = store.plain;
  scenario.specimen.temperature_c = temperature_c;
  scenario.specimen.urochrome_a420 *= strength;
  for (auto& [key, amount] : scenario.specimen.mmol_per_l) {
    amount *= strength;
  }
  scenario.room_c = temperature_c;
  scenario.rules.calibration_c = store.world->urinometer.calibration_c;
  scenario.seed = unknown.seed;
  FloatJar jar;
  jar.setup = sitting::make_setup(*store.world, scenario);
  jar.setup.tube_count = 0;
  jar.state = bench::begin(jar.setup);
  jar.state.gloves = jar.state.goggles = true;
  bench::perform(jar.state, jar.setup, bench::Pour{"specimen", "jar", store.rules.floats.jar_ml, true});
  bench::perform(jar.state, jar.setup, bench::Float{"jar", true, true});
  bench::advance(jar.state, jar.setup, store.rules.floats.settles_s);
  jar.shows = bench::scale_view(jar.state, jar.setup).value();
  jar.liquid_c = temperature_c;
  return jar;
}

} // namespace

FloatJar make_float(const Store& store, const Unknown& unknown) {
  const auto& rules = store.rules.floats;
  const auto water = rules.temperature_c.find(unknown.trap);
  if (water == rules.temperature_c.end()) {
    throw std::invalid_argument("no water of a float: " + unknown.trap);
  }
  const Draws draws(unknown.seed);
  const double temperature_c =
      std::round(draws.between("temperature", water->second.low, water->second.high));
  double low = 0.1; // Strengths and what the float showed in them.
  double high = 3;
  double low_shows = fill(store, unknown, low, temperature_c).shows.reading_at_surface;
  double high_shows = fill(store, unknown, high, temperature_c).shows.reading_at_surface;
  FloatJar jar;
  for (int i = 0; i < most_jars; ++i) {
    // Gravity is all but straight in the strength.
    const double strength = low + (unknown.target - low_shows) / (high_shows - low_shows) * (high - low);
    jar = fill(store, unknown, std::max(strength, 0.0), temperature_c);
    const double shows = jar.shows.reading_at_surface;
    if (std::abs(shows - unknown.target) < near_enough) {
      break;
    }
    (shows < unknown.target ? low : high) = strength;
    (shows < unknown.target ? low_shows : high_shows) = shows;
  }
  const double eye = draws.between("eye", rules.eye_mm.low, rules.eye_mm.high);
  jar.eye_mm = std::round(draws.even("eye above") < 0.7 ? eye : -eye);
  return jar;
}

} // namespace matula::practice
