// Pigment spectra against their published tables.
#include "tests/sim/chemistry_world.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace matula;
using namespace matula::tests;

namespace {

double epsilon(const std::string& species, double nm) {
  const ChemistryWorld& world = chemistry_world();
  const auto band =
      static_cast<std::size_t>(std::lround((nm - optics::first_wavelength_nm) / optics::band_step_nm));
  return world.catalogue.species[world.id(species)].absorptivity_l_per_mol_cm[band];
}

} // namespace

TEST_CASE("oxyhaemoglobin, per tetramer") {
  // S. Prahl, Optical absorption of hemoglobin (OMLC), data of Gratzer and Kollias.
  CHECK(epsilon("haemoglobin", 400) == Approx(266232).epsilon(0.001));
  CHECK(epsilon("haemoglobin", 410) == Approx(466840).epsilon(0.001));
  CHECK(epsilon("haemoglobin", 450) == Approx(62816).epsilon(0.001));
  CHECK(epsilon("haemoglobin", 500) == Approx(20933).epsilon(0.001));
  CHECK(epsilon("haemoglobin", 540) == Approx(53236).epsilon(0.001));
  CHECK(epsilon("haemoglobin", 560) == Approx(32613).epsilon(0.001));
  CHECK(epsilon("haemoglobin", 600) == Approx(3200).epsilon(0.001));
  CHECK(epsilon("haemoglobin", 700) == Approx(290).epsilon(0.001));
  // Zijlstra, Buursma and van Assendelft 2000 measured 7-12 % more at 540 nm: an independent check of order.
  CHECK(epsilon("haemoglobin", 540) == Approx(57280).epsilon(0.12));
}

TEST_CASE("acid methaemoglobin, per tetramer") {
  // Zijlstra, Buursma and van Assendelft 2000.
  CHECK(epsilon("methaemoglobin", 450) == Approx(39196).epsilon(0.001));
  CHECK(epsilon("methaemoglobin", 500) == Approx(36424).epsilon(0.001));
  CHECK(epsilon("methaemoglobin", 540) == Approx(25376).epsilon(0.001));
  CHECK(epsilon("methaemoglobin", 630) == Approx(15620).epsilon(0.001));
  CHECK(epsilon("methaemoglobin", 660) == Approx(3780).epsilon(0.001));
  // What makes it brown: more red light is stopped than by the oxygenated form, less green.
  CHECK(epsilon("methaemoglobin", 630) > 20 * epsilon("haemoglobin", 630));
  CHECK(epsilon("methaemoglobin", 540) < 0.5 * epsilon("haemoglobin", 540));
}

TEST_CASE("bilirubin") {
  // PhotochemCAD, in chloroform, scaled to Agati and Fusi 1990; water adds a shoulder of less than a tenth of
  // the peak.
  CHECK(epsilon("bilirubin", 400) == Approx(23223).epsilon(0.01));
  CHECK(epsilon("bilirubin", 440) == Approx(52109).epsilon(0.01));
  CHECK(epsilon("bilirubin", 460) == Approx(53869).epsilon(0.025));
  CHECK(epsilon("bilirubin", 450) > epsilon("bilirubin", 440));
  CHECK(epsilon("bilirubin", 450) > epsilon("bilirubin", 460));
  // Lee and Gartner 1976 (Pediatr Res 10:782-787): in acid buffered water a shoulder at 480 to 560 nm, none
  // beyond.
  for (const int nm : {500, 520, 540}) {
    CAPTURE(nm);
    CHECK(epsilon("bilirubin", nm) > 0.03 * epsilon("bilirubin", 450));
    CHECK(epsilon("bilirubin", nm) < 0.20 * epsilon("bilirubin", 450));
  }
  CHECK(epsilon("bilirubin", 620) < 0.001 * epsilon("bilirubin", 450));
  // 1 mg/dL absorbs 0.94 a centimetre at 450 nm.
  const ChemistryWorld& world = chemistry_world();
  const double molar = 0.01 / world.catalogue.species[world.id("bilirubin")].molar_mass_g_per_mol;
  CHECK(molar * epsilon("bilirubin", 450) == Approx(0.94).epsilon(0.02));
}
