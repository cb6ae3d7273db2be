// The size of what hangs in the tube against the words the trade grades by. Words and limits (mg/dL) of the
// acid test: negative < 6, trace 6-30, 1+ 30-100 cloud without grains, 2+ 100-200 grains without flakes, 3+
// 200-400 flakes, 4+ > 400 clumps; S.K. Strasinger, Urinalysis and Body Fluids, from memory. Heat and acetic
// acid: 1+ cloud to 100, 2+ granular 100-250, 3+ flocculent 250-500, 4+ solid > 500: teaching pages.
#include "engine/assets/world.hpp"
#include "sim/specimen/specimen.hpp"

#include <catch2/catch.hpp>

#include <memory>

using namespace matula;

namespace {

/// What a person could see of one kind of solid, as shares of its mass.
struct Seen {
  double solid_mg = 0;
  double cloud = 0;  ///< Suspended, below 0.1 mm across: no single grain stands out.
  double grains = 0; ///< Suspended, 0.1-0.6 mm.
  double flakes = 0; ///< Over 0.6 mm, or on the bottom.
  double clot = 0;
};

const assets::World& world() {
  static const std::unique_ptr<const assets::World> loaded = [] {
    auto result = assets::load(assets::folder());
    REQUIRE(result);
    return std::move(*result);
  }();
  return *loaded;
}

matter::Mixture urine(double volume_ml, double albumin_mg_per_dl) {
  specimen::Specimen s;
  s.volume_ml = volume_ml;
  s.target_ph = 6;
  s.mmol_per_l = {{"urea", 300},    {"creatinine", 9}, {"sodium", 110},   {"potassium", 50},
                  {"ammonium", 25}, {"chloride", 120}, {"phosphate", 20}, {"sulphate", 17}};
  s.mg_per_dl = {{"albumin", albumin_mg_per_dl}};
  return specimen::make_liquid(s, world().catalogue);
}

matter::Mixture from_bottle(const std::string& key, double volume_ml) {
  const matter::Reagent* reagent = world().catalogue.find_reagent(key);
  REQUIRE(reagent != nullptr);
  matter::Mixture m = matter::empty_mixture(world().catalogue);
  m.volume_ml = volume_ml;
  m.temperature_c = 22;
  for (const auto& [id, molar] : reagent->mol_per_l) {
    m.mmol[id] = molar * volume_ml;
  }
  return m;
}

Seen look(const column::Column& tube, const std::string& key) {
  const matter::ParticleId id = *world().catalogue.find_particle(key);
  const matter::ParticleKind& kind = world().catalogue.particles[id];
  Seen seen;
  for (const matter::Mixture& layer : tube.layers) {
    for (std::size_t i = 0; i < matter::size_bins; ++i) {
      const double across_mm = 2000 * kind.bin_radius_m(i);
      (across_mm < 0.1   ? seen.cloud
       : across_mm < 0.6 ? seen.grains
                         : seen.flakes) += layer.populations[id].grams[i];
    }
    seen.clot += layer.populations[id].clot_g;
  }
  seen.flakes += tube.sediment.populations[id].total_g();
  const double all = seen.cloud + seen.grains + seen.flakes + seen.clot;
  seen.solid_mg = 1000 * all;
  for (double* share : {&seen.cloud, &seen.grains, &seen.flakes, &seen.clot}) {
    *share = all > 0 ? *share / all : 0;
  }
  return seen;
}

/// 3 mL and 3 mL, turned over for `mixed_s`, read at 10 min.
Seen acid_test(double mg_per_dl, double mixed_s = 10) {
  const column::Chemistry& chemistry = world().chemistry;
  column::Column tube = column::empty_column(column::VesselShape{}, world().catalogue);
  column::pour_in(tube, urine(3, mg_per_dl), false, world().catalogue);
  column::pour_in(tube, from_bottle("ssa_3", 3), false, world().catalogue);
  column::Surroundings around;
  around.inverting = true;
  around.shear_per_s = 150;
  column::advance(tube, chemistry, around, mixed_s);
  column::advance(tube, chemistry, column::Surroundings{}, 600 - mixed_s);
  return look(tube, "ssa_protein");
}

/// 9 mL, the top 25 mm boiled, four drops of 10 % acid, boiled again, read a minute later.
Seen heat_test(double mg_per_dl) {
  const column::Chemistry& chemistry = world().chemistry;
  column::Column tube = column::empty_column(column::VesselShape{}, world().catalogue);
  column::pour_in(tube, urine(9, mg_per_dl), false, world().catalogue);
  column::Surroundings flame;
  flame.flame_power_w = 45;
  flame.flame_to_mm = tube.shape.level_mm(9);
  flame.flame_from_mm = flame.flame_to_mm - 25;
  column::advance(tube, chemistry, flame, 85);
  column::pour_in(tube, from_bottle("acetic_acid_10", 0.2), false, world().catalogue);
  column::advance(tube, chemistry, flame, 25);
  column::advance(tube, chemistry, column::Surroundings{}, 60);
  return look(tube, "heat_protein");
}

} // namespace

TEST_CASE("acid test: cloud, grains, flakes and clot come in the order of the words") {
  CHECK(acid_test(2).solid_mg < 0.01);
  CHECK(acid_test(20).cloud > 0.99);
  CHECK(acid_test(70).cloud > 0.95);
  for (const double two_plus : {130.0, 165.0}) {
    const Seen seen = acid_test(two_plus);
    CHECK(seen.grains > 0.3);
    CHECK(seen.flakes < 0.35);
    CHECK(seen.clot == 0);
  }
  for (const double three_plus : {240.0, 330.0}) {
    const Seen seen = acid_test(three_plus);
    CHECK(seen.flakes > 0.5);
    CHECK(seen.clot < 0.3);
  }
  CHECK(acid_test(500).clot > 0.5);
}

TEST_CASE("acid test: how long it is turned over does not move a tube by a grade") {
  for (const double strength : {60.0, 140.0, 280.0}) {
    const Seen brief = acid_test(strength, 5);
    const Seen longer = acid_test(strength, 15);
    CHECK(brief.cloud == Approx(longer.cloud).margin(0.2));
    CHECK(brief.flakes == Approx(longer.flakes).margin(0.3));
  }
}

TEST_CASE("heat test: cloud, grains, flakes and curd come in the order of the words") {
  CHECK(heat_test(5).solid_mg < 0.05);
  CHECK(heat_test(50).cloud > 0.95);
  const Seen two_plus = heat_test(160);
  CHECK(two_plus.grains > 0.3);
  CHECK(two_plus.flakes < 0.35);
  CHECK(two_plus.clot == 0);
  const Seen three_plus = heat_test(330);
  CHECK(three_plus.flakes > 0.5);
  CHECK(three_plus.clot < 0.4);
  CHECK(heat_test(700).clot > 0.5);
}
