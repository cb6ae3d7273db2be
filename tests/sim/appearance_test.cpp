#include "tests/sim/optics_data.hpp"

#include "sim/appearance/surface.hpp"
#include "sim/optics/band_shape.hpp"

#include <catch2/catch.hpp>
#include <cmath>
#include <set>

using namespace matula;
using namespace matula::appearance;

namespace {

/// A small made-up world: one yellow solute, soft fractal flocs, and dark solid grains.
struct World {
  matter::Catalogue catalogue;
  OpticsTables tables;

  World() {
    matter::Species yellow;
    yellow.key = "yellow";
    yellow.molar_mass_g_per_mol = 300;
    yellow.absorptivity_l_per_mol_cm = optics::exponential_tail(1, 420, 0.018);
    catalogue.species.push_back(yellow);
    matter::ParticleKind floc;
    floc.key = "floc";
    floc.solid_density_kg_m3 = 1300;
    floc.core_radius_m = 1.5e-5;
    floc.refractive_index = optics::flat(1.463);
    catalogue.particles.push_back(floc);
    matter::ParticleKind grain;
    grain.key = "grain";
    grain.fractal_dimension = 3;
    grain.solid_density_kg_m3 = 6000;
    grain.refractive_index = optics::flat(2.8);
    grain.extinction_index = optics::gaussian_band(0.5, 420, 100);
    catalogue.particles.push_back(grain);
    tables.colorimetry = tests::load_colorimetry();
    tables.cylinder = tests::load_cylinder();
    tables.scatter = make_scatter_tables(catalogue);
  }
};

const World& world() {
  static const World w;
  return w;
}

column::Column tube(std::size_t layers = 12, double volume_ml = 8) {
  column::Column c = column::empty_column({}, world().catalogue);
  for (std::size_t i = 0; i < layers; ++i) {
    matter::Mixture m = matter::empty_mixture(world().catalogue);
    m.volume_ml = volume_ml / static_cast<double>(layers);
    c.layers.push_back(m);
  }
  return c;
}

column::Column with_yellow(double absorbance_per_cm) {
  column::Column c = tube();
  for (auto& layer : c.layers) {
    layer.mmol[0] = absorbance_per_cm * layer.volume_ml;
  }
  return c;
}

column::Column with_solid(std::size_t kind, std::size_t bin, double g_per_ml) {
  column::Column c = tube();
  for (auto& layer : c.layers) {
    layer.populations.of(kind).grams[bin] = g_per_ml * layer.volume_ml;
  }
  return c;
}

Appearance look(const column::Column& c, View view = {}, std::uint64_t seed = 1) {
  return look_at(c, world().catalogue, world().tables, view, seed);
}

const Row& middle(const Appearance& looks) {
  return looks.rows[looks.rows.size() / 2];
}

constexpr std::size_t fine = 8;    // 1 um
constexpr std::size_t coarse = 26; // pieces of a quarter of a millimetre

} // namespace

TEST_CASE("An empty vessel shows only itself") {
  const Appearance looks = look(column::empty_column({}, world().catalogue));
  CHECK(looks.level_mm == 0);
  CHECK(looks.rows.empty());
  CHECK(looks.pieces.empty());
  CHECK(looks.inner_diameter_mm == 14);
}

TEST_CASE("Clear water: white on white, the black card's own black, crisp print") {
  const Appearance looks = look(tube());
  REQUIRE(looks.rows.size() >= 64);
  const Row& row = middle(looks);
  CHECK(row.on_white[0].y == Approx(1).margin(1e-6));
  CHECK(row.on_black[0].y == Approx(0.004).margin(1e-6));
  CHECK(row.print_contrast == Approx(1).margin(1e-9));
  CHECK(row.print_blur_mm == 0);
  CHECK(row.granularity == 0);
  CHECK(row.opacity == Approx(0).margin(1e-9));
}

TEST_CASE("Rows cover the liquid from the bottom to the surface") {
  const Appearance looks = look(tube());
  double top = 0;
  for (const Row& row : looks.rows) {
    CHECK(row.height_mm - row.thickness_mm / 2 == Approx(top).margin(1e-9));
    top = row.height_mm + row.thickness_mm / 2;
  }
  CHECK(top == Approx(looks.level_mm));
}

TEST_CASE("Beer and Lambert, decadic: an absorbance of 1 along the axis leaves a tenth") {
  column::Column c = with_yellow(1);
  matter::Catalogue flat = world().catalogue;
  flat.species[0].absorptivity_l_per_mol_cm = optics::flat(1 / 1.4); // tube of 1.4 cm
  const Appearance looks = look_at(c, flat, world().tables, {}, 1);
  CHECK(middle(looks).on_white[0].y ==
        Approx(0.1 * 1.00035).epsilon(0.01)); // first sample lies 1/16 radius off the axis
  CHECK(middle(looks).opacity == Approx(0.9).epsilon(1e-6));
}

TEST_CASE("More dose never brings more light through, nor clearer print, nor a darker veil") {
  for (const std::size_t bin : {std::size_t{0}, fine, std::size_t{18}, coarse}) {
    Row last = middle(look(tube()));
    for (double dose = 1e-6; dose < 3e-3; dose *= 2) {
      const Row row = middle(look(with_solid(0, bin, dose)));
      CAPTURE(bin, dose);
      CHECK(row.print_contrast <= last.print_contrast);
      CHECK(row.opacity >= last.opacity);
      CHECK(row.on_black[0].y >= last.on_black[0].y - 0.004); // noise of the table
      for (const double share : {row.print_contrast, row.opacity, row.granularity}) {
        CHECK(share >= 0);
        CHECK(share <= 1);
      }
      last = row;
    }
  }
  double last = 2;
  for (double a = 0; a < 4; a += 0.2) {
    const double y = middle(look(with_yellow(a))).on_white[0].y;
    CHECK(y < last);
    last = y;
  }
}

TEST_CASE("A yellow solute looks yellow, more of it deeper") {
  const auto chroma = [](double a) {
    const optics::Lab lab = optics::to_lab(middle(look(with_yellow(a))).on_white[0], optics::d65_white);
    CHECK(lab.b > std::fabs(lab.a));
    return lab.b;
  };
  CHECK(chroma(0.1) < chroma(0.4));
}

TEST_CASE("Under the indoor lamp clear water is still white") {
  const Row row = middle(look(tube(), {Card::White, optics::Lamp::Indoor}));
  CHECK(row.on_white[0].x == Approx(0.95047).margin(1e-4));
  CHECK(row.on_white[0].z == Approx(1.08883).margin(1e-4));
}

TEST_CASE("Where particles pass from haze to pieces the mean light on black does not jump") {
  const std::vector<double>& size = world().tables.scatter[0].diameter_mm;
  std::size_t first = 0;
  while (size[first] < 0.1) {
    ++first;
  }
  // The rows and the pieces that hang before them, over the face of the tube.
  const auto added = [](const Appearance& looks) {
    const double row = middle(looks).on_black[0].y;
    double hung = 0;
    for (const Piece& p : looks.pieces) {
      hung += 0.785 * p.size_mm * p.size_mm * p.opacity * (p.colour.y - row);
    }
    return row - 0.004 + hung / (looks.inner_diameter_mm * looks.level_mm);
  };
  const double haze = added(look(with_solid(0, first - 1, 2e-4), {Card::Black}));
  const double pieces = added(look(with_solid(0, first, 2e-4), {Card::Black}));
  CHECK(pieces == Approx(haze).epsilon(0.4)); // one class is twice the mass of the next
}

TEST_CASE("Pieces: only what can be seen, deterministic, capped, inside the tube, far to near") {
  CHECK(look(with_solid(0, fine, 1e-4)).pieces.empty());
  const column::Column c = with_solid(0, coarse, 2e-4);
  const Appearance looks = look(c);
  REQUIRE(!looks.pieces.empty());
  CHECK(looks.pieces.size() <= 8020); // rounding of each class
  const Appearance again = look(c);
  const Appearance other = look(c, {}, 2);
  REQUIRE(again.pieces.size() == looks.pieces.size());
  bool differs = false;
  for (std::size_t i = 0; i < looks.pieces.size(); ++i) {
    const Piece& p = looks.pieces[i];
    CHECK(p.x == again.pieces[i].x);
    CHECK(p.height_mm == again.pieces[i].height_mm);
    CHECK(std::hypot(p.x, p.z) <= 1);
    CHECK(p.height_mm >= 0);
    CHECK(p.height_mm <= looks.level_mm);
    CHECK(p.size_mm >= 0.09);
    CHECK(p.opacity > 0);
    CHECK(p.opacity <= 1);
    differs = differs || i >= other.pieces.size() || other.pieces[i].x != p.x;
    if (i > 0) {
      CHECK(p.z >= looks.pieces[i - 1].z);
    }
  }
  CHECK(differs);
}

TEST_CASE("As many pieces as there are particles, while they are few") {
  const matter::ParticleKind& kind = world().catalogue.particles[0];
  column::Column c = tube();
  for (auto& layer : c.layers) {
    layer.populations.of(0).grams[30] = 3 * kind.bin_mass_g(30);
  }
  CHECK(look(c).pieces.size() >= 36);
  CHECK(look(c).pieces.size() <= 37);
  CHECK(look(c).pieces.front().kind ==
        (look(c).pieces.front().size_mm > 0.6 ? PieceKind::Floc : PieceKind::Granule));
}

TEST_CASE("Pieces make grain, haze does not") {
  CHECK(middle(look(with_solid(0, fine, 1e-4))).granularity == 0);
  CHECK(middle(look(with_solid(0, coarse, 1e-4))).granularity > 0.02);
}

TEST_CASE("Solids on the bottom: a bed of their own colour, counted as settled") {
  column::Column c = tube();
  c.sediment = matter::empty_mixture(world().catalogue);
  c.sediment.volume_ml = 0.1;
  c.sediment.populations.of(1).grams[10] = 0.2;
  const Appearance looks = look(c);
  CHECK(looks.settled_share == Approx(1));
  CHECK(looks.sediment.height_mm == Approx(c.shape.level_mm(0.1)));
  const optics::Lab lab = optics::to_lab(looks.sediment.colour, optics::d65_white);
  CHECK(lab.b > 10); // the grains take out blue
  CHECK(looks.level_mm == Approx(c.shape.level_mm(8.1)));
  CHECK(middle(looks).on_white[0].y == Approx(1).margin(1e-6)); // clear above
}

TEST_CASE("A clot is found where it hangs") {
  column::Column c = tube(10);
  for (std::size_t i = 5; i < 9; ++i) {
    c.layers[i].populations.of(0).clot_g = 2e-3 * c.layers[i].volume_ml;
  }
  const Appearance looks = look(c);
  CHECK(looks.clot_fraction == Approx((looks.clot_to_mm - looks.clot_from_mm) / looks.level_mm));
  CHECK(looks.clot_fraction == Approx(0.4).margin(0.06)); // the round bottom stretches the lowest layers
  CHECK(looks.clot_colour.y > 0.5);
  CHECK(look(tube()).clot_fraction == 0);
}

TEST_CASE("A coloured layer over a clear one stays where it is") {
  column::Column c = tube(16);
  for (std::size_t i = 8; i < 16; ++i) {
    c.layers[i].mmol[0] = 0.8 * c.layers[i].volume_ml;
  }
  const Appearance looks = look(c);
  CHECK(looks.rows[20].on_white[0].z > 1.0);
  CHECK(looks.rows[70].on_white[0].z < 0.6);
}

TEST_CASE("The surface: meniscus and steam") {
  CHECK(meniscus_rise_mm(7, 20) > 2);
  CHECK(meniscus_rise_mm(7, 20) < 3.5);
  CHECK(meniscus_rise_mm(0.5, 20) < 0.5);
  CHECK(steam_over(22) == 0);
  CHECK(steam_over(95) > steam_over(70));
  CHECK(steam_over(100) <= 1);
}
