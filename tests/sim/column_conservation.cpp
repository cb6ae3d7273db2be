// Nothing is lost and nothing goes negative, whatever is done to a column.
#include "column_support.hpp"

#include <catch2/catch.hpp>

using namespace column_support;

namespace {

// Rounding of a few thousand additions of doubles.
constexpr double rounding = 1e-9;

double salt_mmol(const column::Column& c, const matter::Catalogue& catalogue) {
  return column::whole(c, catalogue).mmol[salt];
}

double protein_g(const column::Column& c, const matter::Catalogue& catalogue) {
  const matter::Mixture all = column::whole(c, catalogue);
  return all.mmol[protein] * 66.5 + all.populations[flocs].total_g();
}

} // namespace

TEST_CASE("every kind of treatment keeps salt, protein and grains", "[column]") {
  const matter::Catalogue catalogue = small_catalogue();
  const column::Chemistry chemistry = small_chemistry(catalogue);
  for (const double strength : {20.0, 300.0, 1500.0}) {
    matter::Mixture urine = liquid(catalogue, 6, 22, 0.3, strength);
    urine.populations.of(grains).grams[0] = 1e-3;
    column::Column tube = tube_with(catalogue, urine);
    const double salt_before = salt_mmol(tube, catalogue);
    const double protein_before = protein_g(tube, catalogue);

    column::Surroundings inverted;
    inverted.inverting = true;
    inverted.shear_per_s = 150;
    column::Surroundings rest;
    column::Surroundings flame;
    flame.flame_power_w = 60;
    flame.flame_from_mm = 25;
    flame.flame_to_mm = 45;
    column::Surroundings swirl;
    swirl.shear_per_s = 150;
    for (const auto& [around, seconds] : {std::pair{inverted, 5.0},
                                          {rest, 120.0},
                                          {swirl, 5.0},
                                          {flame, 40.0},
                                          {rest, 60.0},
                                          {inverted, 3.0}}) {
      column::advance(tube, chemistry, around, seconds);
      CHECK(nothing_negative(tube));
      CHECK(salt_mmol(tube, catalogue) == Approx(salt_before).epsilon(rounding));
      CHECK(protein_g(tube, catalogue) == Approx(protein_before).epsilon(rounding));
      CHECK(column::whole(tube, catalogue).populations[grains].total_g() == Approx(1e-3).epsilon(rounding));
    }
  }
}

TEST_CASE("volume stays until something boils, and steam takes water only", "[column]") {
  const matter::Catalogue catalogue = small_catalogue();
  const column::Chemistry chemistry = small_chemistry(catalogue);
  column::Column tube = tube_with(catalogue, liquid(catalogue, 8, 22));
  column::Surroundings rest;
  column::advance(tube, chemistry, rest, 60);
  CHECK(tube.volume_ml() == Approx(8).epsilon(rounding));

  column::Surroundings flame;
  flame.flame_power_w = 80;
  flame.flame_from_mm = 0;
  flame.flame_to_mm = 100;
  column::advance(tube, chemistry, flame, 120);
  CHECK(tube.volume_ml() < 8 - 0.5);
  CHECK(salt_mmol(tube, catalogue) == Approx(8 * 0.15).epsilon(rounding));
  CHECK(tube.boil_over_ml == 0);
}

TEST_CASE("what is poured and drawn adds up", "[column]") {
  const matter::Catalogue catalogue = small_catalogue();
  column::Column tube = column::empty_column(column::VesselShape{}, catalogue);
  CHECK(column::pour_in(tube, liquid(catalogue, 5, 20), false, catalogue) == 0);
  CHECK(column::pour_in(tube, liquid(catalogue, 3, 60, 0.5), true, catalogue) == 0);
  CHECK(tube.volume_ml() == Approx(8).epsilon(rounding));
  CHECK(column::mean_temperature_c(tube) == Approx((5 * 20 + 3 * 60) / 8.0).epsilon(rounding));
  const matter::Mixture taken = column::draw_out(tube, 2.5, catalogue);
  CHECK(taken.volume_ml == Approx(2.5).epsilon(rounding));
  CHECK(tube.volume_ml() == Approx(5.5).epsilon(rounding));
  CHECK(taken.mmol[salt] + salt_mmol(tube, catalogue) == Approx(5 * 0.15 + 3 * 0.5).epsilon(rounding));
  // A tube holds 20 mL; what does not fit comes back.
  CHECK(column::pour_in(tube, liquid(catalogue, 30, 20), false, catalogue) == Approx(15.5).epsilon(rounding));
  const matter::Mixture all = column::draw_out(tube, 1000, catalogue);
  CHECK(all.volume_ml == Approx(20).epsilon(rounding));
  CHECK(tube.volume_ml() == 0);
}
