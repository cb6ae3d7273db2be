// What breaks cells and kills organisms in any vessel. Figures from memory where no source stands beside
// them.
#include "tests/sim/chemistry_world.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <string>

using namespace matula;
using namespace matula::tests;

namespace {

constexpr double number_per_ml = 1e6;

matter::Mixture with_particles(matter::Mixture m, const std::string& kind) {
  const ChemistryWorld& world = chemistry_world();
  const matter::ParticleId id = world.solid(kind);
  m.populations.of(id).grams[0] = number_per_ml * m.volume_ml * world.catalogue.particles[id].bin_mass_g(0);
  return m;
}

double left(const matter::Mixture& m, const std::string& kind) {
  const ChemistryWorld& world = chemistry_world();
  const matter::ParticleId id = world.solid(kind);
  return m.populations[id].total_g() / world.catalogue.particles[id].bin_mass_g(0) / m.volume_ml /
         number_per_ml;
}

/// Share of a million in a millilitre that is left after so long.
double left_of(const std::string& kind, const matter::Mixture& liquid, double temperature_c, double seconds) {
  matter::Mixture m = with_particles(liquid, kind);
  hold(m, temperature_c, seconds);
  return left(m, kind);
}

matter::Mixture saline(double g_per_dl) {
  const double mmol_per_l = g_per_dl * 10 / 58.44 * 1000;
  return solution(1, {{"sodium", mmol_per_l}, {"chloride", mmol_per_l}});
}

/// Decades that die in a minute.
double decades_a_minute(const std::string& kind, double temperature_c) {
  return -std::log10(left_of(kind, urine(1, 6), temperature_c, 60));
}

} // namespace

TEST_CASE("Heat kills: a tenth is left after each D, ten times sooner each z") {
  // Escherichia coli: D about half a minute at 60 C, 5 min at 55 C.
  CHECK(decades_a_minute("escherichia", 60) == Approx(2).epsilon(0.05));
  CHECK(decades_a_minute("escherichia", 55) == Approx(0.2).epsilon(0.05));
  CHECK(left_of("escherichia", urine(1, 6), 37, 3600) > 0.98);
  for (const char* kind : {"escherichia", "proteus", "staphylococcus", "enterococcus", "candida"}) {
    INFO(kind);
    CHECK(left_of(kind, urine(1, 6), 98, 60) == 0); // boiled for a minute: none
    CHECK(left_of(kind, urine(1, 6), 25, 3600) > 0.999);
  }
}

TEST_CASE("Enterococci live through half an hour at 60 C, which kills the others") {
  // J.M. Sherman, Bacteriol. Rev. 1 (1937) 3: a mark of the genus.
  CHECK(left_of("enterococcus", urine(1, 6), 60, 1800) > 1e-4);
  CHECK(left_of("escherichia", urine(1, 6), 60, 1800) == 0);
  CHECK(left_of("candida", urine(1, 6), 60, 1800) == 0);
}

TEST_CASE("The dead stay as particles of the same weight") {
  matter::Mixture m = with_particles(urine(1, 6), "escherichia");
  const auto& world = chemistry_world();
  const double before_g = m.populations[world.solid("escherichia")].total_g();
  hold(m, 80, 120);
  CHECK(left(m, "escherichia") == 0);
  CHECK(m.populations[world.solid("dead_rods")].total_g() == Approx(before_g));
}

TEST_CASE("Red cells keep in saline, half burst at 0.45 %, all at 0.3 % and in water") {
  CHECK(left_of("erythrocytes", saline(0.9), 22, 3600) > 0.99);
  CHECK(left_of("erythrocytes", saline(0.45), 22, 600) < 0.8);
  CHECK(left_of("erythrocytes", saline(0.45), 22, 600) > 0.2);
  CHECK(left_of("erythrocytes", saline(0.3), 22, 300) < 0.05);
  CHECK(left_of("erythrocytes", solution(1, {}), 22, 60) < 0.01);
  // Urea goes through their skin and does not hold their water: common knowledge of physiology.
  CHECK(left_of("erythrocytes", solution(1, {{"urea", 300}}), 22, 60) < 0.01);
  CHECK(left_of("erythrocytes", urine(1, 6), 22, 3600) > 0.95);
}

TEST_CASE("Red cells burst with warmth from 50 C, at once near the boil, and not when fixed") {
  CHECK(left_of("erythrocytes", urine(1, 6), 45, 600) > 0.95);
  CHECK(left_of("erythrocytes", urine(1, 6), 50, 1200) == Approx(0.45).margin(0.2));
  CHECK(left_of("erythrocytes", urine(1, 6), 60, 60) < 0.01);
  CHECK(left_of("erythrocytes", urine(1, 6), 90, 5) == 0);
  CHECK(left_of("erythrocytes", urine(1, 6, {{"formaldehyde", 1300}}), 52, 1200) > 0.9);
}

TEST_CASE("Dilute acetic acid takes red cells away and leaves white ones; a drop of it in urine does not") {
  // Acetic acid of 2 %, a stain for white cells in deposits: common practice.
  const matter::Mixture strong = together(urine(1, 6), bottle("acetic_acid_10", 0.3));
  CHECK(left_of("erythrocytes", strong, 22, 120) < 0.05);
  CHECK(left_of("leucocytes", strong, 22, 120) > 0.95);
  CHECK(left_of("erythrocytes", together(urine(5, 6), bottle("acetic_acid_10", 0.05)), 22, 120) > 0.9);
}

TEST_CASE("What a red cell held goes into the liquid: 30 pg of haemoglobin each") {
  matter::Mixture m = with_particles(urine(1, 6), "erythrocytes");
  const auto& world = chemistry_world();
  const double before = m.mmol[world.id("haemoglobin")];
  m.temperature_c = 56;
  reaction::Network only;
  only.breakdowns = world.network.breakdowns;
  reaction::react(m, only, world.catalogue, 600, 0);
  const double pg = (m.mmol[world.id("haemoglobin")] - before) / 1000 *
                    world.catalogue.species[world.id("haemoglobin")].molar_mass_g_per_mol * 1e12 /
                    number_per_ml;
  CHECK(left(m, "erythrocytes") < 1e-3);
  CHECK(pg == Approx(30).margin(1)); // common value
}
