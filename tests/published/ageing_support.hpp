#pragma once

#include "engine/assets/world.hpp"
#include "sim/ageing/live.hpp"
#include "sim/matter/ph.hpp"
#include "sim/specimen/specimen.hpp"

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

/// A healthy adult's urine of 100 mL (typical concentrations, from memory).
inline specimen::Specimen plain_urine(double ph = 6.0) {
  specimen::Specimen s;
  s.volume_ml = 100;
  s.target_ph = ph;
  s.mmol_per_l = {{"sodium", 120},   {"potassium", 55}, {"ammonium", 30}, {"urea", 280},
                  {"creatinine", 9}, {"phosphate", 20}, {"sulphate", 16}, {"calcium", 3.3},
                  {"magnesium", 3},  {"citrate", 2},    {"urate", 2.5},   {"other_organics", 25}};
  return s;
}

inline matter::SpeciesId id(const std::string& key) {
  return world().catalogue.find_species(key).value();
}
inline matter::ParticleId kind(const std::string& key) {
  return world().catalogue.find_particle(key).value();
}

inline double mmol_per_l(const matter::Mixture& liquid, const std::string& key) {
  return liquid.molar(id(key)) * 1000;
}

/// Number of cells or organisms in a millilitre: resting ones and growing ones of twice the mass.
inline double per_ml(const matter::Mixture& liquid, const std::string& key) {
  const matter::Population& p = liquid.populations[kind(key)];
  const double smallest_g = world().catalogue.particles[kind(key)].bin_mass_g(0);
  return (p.grams[0] + 0.5 * p.grams[1]) / smallest_g / liquid.volume_ml;
}

inline double ph(const matter::Mixture& liquid) {
  return matter::ph(liquid, world().catalogue);
}

/// The specimen after `hours` at a temperature.
inline matter::Mixture kept(matter::Mixture liquid, double temperature_c, double hours,
                            const ageing::Keeping& keeping = {}, ageing::Gas* gas = nullptr) {
  ageing::Gas unused;
  liquid.temperature_c = temperature_c;
  ageing::live(liquid, world().catalogue, world().chemistry, world().ageing, keeping, hours,
               gas != nullptr ? *gas : unused);
  return liquid;
}

inline matter::Mixture kept(const specimen::Specimen& specimen, double temperature_c, double hours,
                            const ageing::Keeping& keeping = {}, ageing::Gas* gas = nullptr) {
  return kept(specimen::make_liquid(specimen, world().catalogue), temperature_c, hours, keeping, gas);
}

/// In a closed box in the dark.
inline ageing::Keeping shut() {
  ageing::Keeping keeping;
  keeping.open = false;
  keeping.lux = 0;
  return keeping;
}

} // namespace matula::test
