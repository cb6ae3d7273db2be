// A heavy liquid that does not mix: it sinks, keeps a sharp border, and takes up what dissolves better in it.
#include "tests/sim/column_support.hpp"

#include "sim/column/border.hpp"
#include "sim/column/layers.hpp"
#include "sim/matter/ph.hpp"

#include <catch2/catch.hpp>

using namespace matula;
using namespace column_support;

namespace {

constexpr matter::SpeciesId dye = 2;  // never charged, likes the heavy liquid
constexpr matter::SpeciesId acid = 3; // crosses only as the free acid
constexpr matter::SpeciesId sodium = 4;
constexpr double rounding = 1e-12;

matter::Catalogue catalogue_with_dyes() {
  matter::Catalogue catalogue = small_catalogue();
  matter::Species s;
  s.molar_mass_g_per_mol = 300;
  s.apparent_volume_ml_per_mol = 240;
  s.key = "dye";
  s.partition = 30;
  catalogue.species.push_back(s);
  s.key = "acid";
  s.partition = 12;
  s.pka = {4.5};
  catalogue.species.push_back(s);
  s = {};
  s.key = "sodium";
  s.molar_mass_g_per_mol = 23;
  s.protonated_charge = 1;
  catalogue.species.push_back(s);
  catalogue.heavy.key = "chloroform";
  return catalogue;
}

struct World {
  matter::Catalogue catalogue = catalogue_with_dyes();
  column::Chemistry chemistry = small_chemistry(catalogue);
  column::Column tube = column::empty_column(column::VesselShape{}, catalogue);

  explicit World(double water_ml = 6, double heavy_ml = 2) {
    matter::Mixture water = liquid(catalogue, water_ml, 22);
    water.mmol[dye] = 1e-3 * water_ml;
    water.mmol[acid] = 2e-3 * water_ml;
    water.mmol[sodium] = 1e-3 * water_ml; // half neutralised: pH near the constant
    column::pour_in(tube, water, false, catalogue);
    matter::Mixture heavy = matter::empty_mixture(catalogue);
    heavy.volume_ml = heavy_ml;
    heavy.temperature_c = 22;
    CHECK(column::pour_in_heavy(tube, heavy, catalogue) == 0);
  }

  void live(double seconds, bool inverting, double shear_per_s) {
    column::Surroundings around;
    around.inverting = inverting;
    around.shear_per_s = shear_per_s;
    column::advance(tube, chemistry, around, seconds);
  }
  void shake(double seconds) { live(seconds, true, 150); }
  void rest(double seconds) { live(seconds, false, 0.4); }

  [[nodiscard]] double in_water(matter::SpeciesId id) const {
    double sum = 0;
    double volume_ml = 0;
    for (const matter::Mixture& layer : tube.layers) {
      sum += layer.mmol[id];
      volume_ml += layer.volume_ml;
    }
    return sum / volume_ml;
  }
};

} // namespace

TEST_CASE("the heavy liquid lies at the bottom and everything else on it") {
  const World world;
  const auto heights = column::extents(world.tube);
  CHECK(heights.front().from_mm == Approx(world.tube.shape.level_mm(2)).epsilon(rounding));
  CHECK(heights.back().to_mm == Approx(world.tube.shape.level_mm(8)).epsilon(rounding));
  CHECK(world.tube.volume_ml() == Approx(8).epsilon(rounding));
}

TEST_CASE("what does not fit stays in the bottle") {
  World world(15, 2);
  matter::Mixture more = matter::empty_mixture(world.catalogue);
  more.volume_ml = 5;
  CHECK(column::pour_in_heavy(world.tube, more, world.catalogue) == Approx(2).epsilon(rounding));
  CHECK(world.tube.volume_ml() == Approx(world.tube.shape.capacity_ml).epsilon(rounding));
}

TEST_CASE("long shaking ends exactly at the partition, of the uncharged form alone") {
  World world;
  world.shake(1200);
  const matter::Mixture& heavy = world.tube.heavy;
  CHECK(heavy.molar(dye) == Approx(30 * world.in_water(dye)).epsilon(1e-9));
  const matter::Acidity now = matter::acidity(world.tube.layers.front(), world.catalogue);
  const double free = column::uncharged_share(world.catalogue.species[acid], now.ph, now.log_gamma);
  CHECK(free > 0.05);
  CHECK(free < 0.95);
  // The pH shifts a little with every step as acid leaves, so this end is reached in the limit.
  CHECK(heavy.molar(acid) == Approx(12 * free * world.in_water(acid)).epsilon(1e-4));
  CHECK(heavy.molar(salt) == 0);
  CHECK(heavy.molar(sodium) == 0);
}

TEST_CASE("shaking, stirring, standing and heating lose nothing and mix nothing") {
  World world;
  const matter::Mixture before = column::whole(world.tube, world.catalogue);
  world.shake(7);
  world.live(20, false, 60);
  world.rest(600);
  column::Surroundings bath;
  bath.bath_c = 55;
  column::advance(world.tube, world.chemistry, bath, 120);
  const matter::Mixture after = column::whole(world.tube, world.catalogue);
  for (const matter::SpeciesId id : {salt, dye, acid, sodium}) {
    CHECK(after.mmol[id] == Approx(before.mmol[id]).epsilon(1e-10));
  }
  CHECK(world.tube.heavy.volume_ml == Approx(2).epsilon(rounding));
  CHECK(nothing_negative(world.tube));
  CHECK(nothing_negative(world.tube.heavy));
}

TEST_CASE("time may be split anywhere") {
  World once;
  once.shake(24);
  World often;
  for (int i = 0; i < 8; ++i) {
    often.shake(3);
  }
  CHECK(once.tube.heavy.mmol[dye] == Approx(often.tube.heavy.mmol[dye]).epsilon(1e-9));
  CHECK(once.tube.heavy.mmol[acid] == Approx(often.tube.heavy.mmol[acid]).epsilon(1e-3));
}

TEST_CASE("a minute's shaking is most of the way, a still border lets next to nothing through") {
  World shaken;
  shaken.shake(60);
  World stirred;
  stirred.live(60, false, 60);
  World still;
  still.rest(600);
  World end;
  end.shake(1200);
  const double all = end.tube.heavy.mmol[dye];
  CHECK(shaken.tube.heavy.mmol[dye] > 0.9 * all);
  CHECK(stirred.tube.heavy.mmol[dye] < 0.5 * all);
  CHECK(still.tube.heavy.mmol[dye] < 0.05 * all);
  CHECK(still.tube.heavy.mmol[dye] > 0);
}

TEST_CASE("a dropper takes what lies on top, and the heavy liquid only for itself") {
  World world;
  const matter::Mixture drawn = column::draw_out(world.tube, 10, world.catalogue);
  CHECK(drawn.volume_ml == Approx(6).epsilon(rounding));
  CHECK(world.tube.volume_ml() == Approx(2).epsilon(rounding));
  CHECK(column::draw_out_heavy(world.tube, 0.5).volume_ml == Approx(0.5).epsilon(rounding));
  world.rest(60); // alone in its tube
  CHECK(world.tube.heavy.volume_ml == Approx(1.5).epsilon(rounding));
}

TEST_CASE("it boils away below the water's boil and keeps what it holds") {
  World world;
  world.shake(60);
  const double held = world.tube.heavy.mmol[dye] + world.in_water(dye) * 6;
  column::Surroundings bath;
  bath.bath_c = 90;
  column::advance(world.tube, world.chemistry, bath, 300);
  CHECK(world.tube.heavy.temperature_c == Approx(world.catalogue.heavy.boiling_c));
  CHECK(world.tube.heavy.volume_ml < 1.9);
  CHECK(world.tube.heavy.volume_ml > 0);
  CHECK(world.tube.heavy.mmol[dye] + world.in_water(dye) * 6 == Approx(held).epsilon(1e-9));
}

TEST_CASE("the state's hash tells the heavy liquid, and is what it was without one") {
  const World with(6, 2);
  World without(6, 2);
  const auto hash = column::state_hash(without.tube);
  CHECK(hash == column::state_hash(with.tube));
  (void)column::draw_out_heavy(without.tube, 1e-6);
  CHECK(hash != column::state_hash(without.tube));
}
