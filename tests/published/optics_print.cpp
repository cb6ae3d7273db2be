#include "tests/sim/optics_data.hpp"

#include "sim/appearance/layer_optics.hpp"

#include <catch2/catch.hpp>
#include <cmath>

using namespace matula;
using namespace matula::appearance;

namespace {

/// A stand-in for formazin: irregular grains of a few tenths of a micrometre to a micrometre and index
/// near 1.6, as solid spheres.
matter::Catalogue formazin() {
  matter::Catalogue catalogue;
  matter::ParticleKind kind;
  kind.key = "formazin";
  kind.primary_radius_m = 5e-7;
  kind.fractal_dimension = 3;
  kind.refractive_index = optics::flat(1.6);
  catalogue.particles.push_back(kind);
  return catalogue;
}

/// The middle row of a 14 mm tube of a suspension of the turbidity that extinguishes `per_m` at 550 nm.
Row row_of(double per_m) {
  const matter::Catalogue catalogue = formazin();
  OpticsTables tables;
  tables.colorimetry = tests::load_colorimetry();
  tables.cylinder = tests::load_cylinder();
  tables.scatter = make_scatter_tables(catalogue);
  column::Column c = column::empty_column({}, catalogue);
  matter::Mixture m = matter::empty_mixture(catalogue);
  m.volume_ml = 8;
  const double per_gram = tables.scatter[0].scatter_per_mm[0][17]; // 550 nm
  m.populations.of(0).grams[0] = per_m / 1000 / per_gram * m.volume_ml;
  c.layers.push_back(m);
  const Appearance looks = look_at(c, catalogue, tables, {Card::Printed, optics::Lamp::Daylight}, 1);
  return looks.rows[40];
}

double contrast_left(double per_m) {
  return row_of(per_m).print_contrast;
}

/// 1 NTU of formazin is an absorbance of about 0.002 a cm at 550 nm (turbidity standards literature).
double extinction_per_m(double ntu) {
  return 0.002 * ntu * std::log(10.0) * 100;
}

} // namespace

TEST_CASE("Formazin: 40 NTU extinguish 18.4 per metre and leave print easily legible") {
  CHECK(extinction_per_m(40) == Approx(18.4).margin(0.05));
  const double left = contrast_left(extinction_per_m(40));
  // At most what single scattering in 14 mm takes away in full, exp(-0.26) = 0.77; the forward part is given
  // back.
  CHECK(left >= std::exp(-0.0184 * 14) - 0.001);
  CHECK(left < 1);
}

TEST_CASE("Print goes only when the tube is really opaque") {
  // Common practice: reading print through a tube fails at several hundred NTU. The eye needs 1 to 5 % of
  // contrast.
  CHECK(contrast_left(extinction_per_m(100)) > 0.5);
  CHECK(contrast_left(extinction_per_m(300)) > 0.05);
  CHECK(contrast_left(extinction_per_m(1500)) < 0.01);
}

TEST_CASE("Fine haze fades print and leaves its edges sharp: what is not scattered obeys Beer and Lambert") {
  // Bouguer, Lambert, Beer; the vessel is 14 mm wide and little light is lost on the way back.
  for (const double per_m : {18.4, 60.0, 120.0}) {
    const Row row = row_of(per_m);
    CAPTURE(per_m);
    const double straight = std::exp(-per_m / 1000 * 14);
    CHECK(row.print_sharp / (row.print_sharp + row.print_halo) == Approx(straight).epsilon(0.03));
    CHECK(row.print_sharp <= row.print_contrast + 1e-9);
    CHECK(row.print_contrast <= row.print_sharp + row.print_halo + 1e-9);
  }
}

TEST_CASE("The spread light as it is drawn keeps the contrast small-angle theory gives it") {
  // Wells 1969. One width for all depths stands in for the mean over them: at 0.5 per mm, where the reader
  // judges, that may cost a few hundredths of contrast.
  for (const double per_m : {30.0, 100.0, 200.0}) {
    const Row row = row_of(per_m);
    CAPTURE(per_m, row.print_blur_mm);
    const double drawn =
        row.print_sharp + row.print_halo * std::exp(-2 * 3.14159265 * 0.5 * row.print_blur_mm);
    CHECK(drawn == Approx(row.print_contrast).margin(0.07));
  }
}
