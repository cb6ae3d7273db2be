#include "tests/sim/optics_data.hpp"

#include "sim/appearance/cylinder_lookup.hpp"
#include "sim/optics/cylinder_light.hpp"

#include <catch2/catch.hpp>
#include <cmath>

using namespace matula::optics;
using matula::appearance::CylinderLookup;
using matula::appearance::lateral_samples;

namespace {

const Colorimetry colorimetry = matula::tests::load_colorimetry();
const matula::appearance::CylinderTable table = matula::tests::load_cylinder();

double offset_of(std::size_t lateral) {
  return (static_cast<double>(lateral) + 0.5) / lateral_samples;
}

double grey_difference(double one, double other) {
  const auto grey = [](double y) { return to_lab({0.95047 * y, y, 1.08883 * y}, d65_white); };
  return ciede2000(grey(one), grey(other));
}

} // namespace

TEST_CASE("White furnace: with no absorption nothing is lost") {
  const Surround even{1, 1, 1, 1, 63, 20};
  for (const double scatter : {0.0, 0.03, 1.0, 20.0}) {
    for (const double offset : {0.1, 0.9}) {
      const CylinderLight light = trace_cylinder({}, offset, scatter, {0}, even, even, 2000, 5);
      CHECK(light.on_white[0] == Approx(1).margin(1e-9)); // summing 2000 shares
    }
  }
}

TEST_CASE("Without particles the tube obeys Beer and Lambert along the refracted chord") {
  const LitCylinder tube;
  for (const double offset : {0.0, 0.5, 0.9375}) {
    const double beside = offset / tube.liquid_index; // n times the distance from the axis is kept
    CHECK(chord(tube, offset) == Approx(std::sqrt(1 - beside * beside)));
    const CylinderLight light = trace_cylinder(tube, offset, 0, {0, 1.7}, white_card(), black_card(), 1, 1);
    CHECK(light.on_white[0] == Approx(1).margin(1e-12));
    CHECK(light.on_white[1] == Approx(std::exp(-1.7 * chord(tube, offset))).epsilon(1e-9));
    CHECK(light.on_black[0] == Approx(black_card().card).margin(1e-12));
  }
}

TEST_CASE("Tracing is deterministic, and another seed agrees within its noise") {
  const auto trace = [](std::uint64_t seed) {
    return trace_cylinder({}, 0.3, 2, {0.5}, white_card(), black_card(), 4000, seed);
  };
  CHECK(trace(7).on_white[0] == trace(7).on_white[0]);
  CHECK(trace(7).on_black[0] != trace(8).on_black[0]);
  CHECK(trace(7).on_black[0] == Approx(trace(8).on_black[0]).margin(0.03)); // 5 sigma of 0.4 / sqrt(4000)
}

TEST_CASE("The table gives back fresh tracing between its grid points within one CIEDE2000") {
  const CylinderLookup lookup(table);
  for (const double scatter : {0.0035, 0.07, 0.42, 3.3, 13.0}) {
    for (const std::size_t lateral : {0, 6}) {
      const std::vector<double> absorptions{0.13, 0.9, 3.3, 9.0};
      const CylinderLight fresh =
          trace_cylinder({}, offset_of(lateral), scatter, absorptions, white_card(), black_card(), 12000, 99);
      for (std::size_t k = 0; k < absorptions.size(); ++k) {
        CAPTURE(scatter, lateral, absorptions[k]);
        const CylinderLookup::Light light = lookup.at(scatter, absorptions[k]);
        CHECK(grey_difference(light.on_white[lateral], fresh.on_white[k]) < 1);
        CHECK(grey_difference(light.on_black[lateral], fresh.on_black[k]) < 1);
      }
    }
  }
}

TEST_CASE("A coloured suspension looked up band by band has the colour of fresh tracing") {
  const CylinderLookup lookup(table);
  Spectrum looked_up{};
  Spectrum fresh{};
  for (std::size_t i = 0; i < band_count; ++i) {
    const double nm = wavelength_nm(i);
    const double scatter = 6 * std::pow(550 / nm, 2);
    const double absorption = 0.3 + 9 / (1 + std::exp((nm - 560) / 12));
    looked_up[i] = lookup.at(scatter, absorption).on_white[1];
    fresh[i] =
        trace_cylinder({}, offset_of(1), scatter, {absorption}, white_card(), black_card(), 2500, 31 + i)
            .on_white[0];
  }
  const Lab one = to_lab(to_xyz(looked_up, colorimetry, Lamp::Daylight), d65_white);
  const Lab other = to_lab(to_xyz(fresh, colorimetry, Lamp::Daylight), d65_white);
  CHECK(one.b > 30); // It is a colour, not a grey.
  CHECK(ciede2000(one, other) < 1);
}

TEST_CASE(
    "The table: light within bounds, absorption only darkens, scattering only lightens the black card") {
  const CylinderLookup lookup(table);
  for (const double scatter : {0.0, 0.01, 0.3, 2.0, 30.0, 500.0}) {
    double last = 2;
    for (double absorption = 0; absorption < 40; absorption += 0.37) {
      const auto light = lookup.at(scatter, absorption);
      CHECK(light.on_white[0] >= 0);
      CHECK(light.on_white[0] <= 1.12); // the room is 1/0.9 of the card
      CHECK(light.on_white[0] <= last);
      last = light.on_white[0];
    }
  }
  double last = 0;
  for (double scatter = 0; scatter < 140; scatter += 0.9) {
    const double veil = lookup.at(scatter, 0).on_black[0];
    CHECK(veil > last - 0.004); // noise of the table, 24 000 paths
    last = veil;
  }
}

TEST_CASE(
    "A tube deeper than the table shows its substance: only the ratio of scattering to absorption counts") {
  const CylinderLookup lookup(table);
  CHECK(lookup.at(1000, 50).on_white[2] == Approx(lookup.at(4000, 200).on_white[2]));
}

TEST_CASE("An incomplete table is refused") {
  auto broken = table;
  broken.on_white.pop_back();
  CHECK_THROWS_AS(CylinderLookup(broken), std::logic_error);
}
