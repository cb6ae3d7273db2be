// The same bits from the same history, and no trace of the step in what comes out.
#include "column_support.hpp"

#include <catch2/catch.hpp>

using namespace column_support;

namespace {

/// The acid test in small: poured, inverted, left to stand; advanced in pieces of `piece_s`.
column::Column stood(const column::Chemistry& chemistry, double strength, double piece_s,
                     double stand_s = 600) {
  const matter::Catalogue& catalogue = *chemistry.catalogue;
  column::Column tube = tube_with(catalogue, liquid(catalogue, 6, 22, 0.1, strength / 2));
  column::Surroundings around;
  around.inverting = true;
  around.shear_per_s = 150;
  for (double t = 0; t < 5; t += piece_s) {
    column::advance(tube, chemistry, around, std::min(piece_s, 5 - t));
  }
  around = column::Surroundings{};
  for (double t = 0; t < stand_s; t += piece_s) {
    column::advance(tube, chemistry, around, std::min(piece_s, stand_s - t));
  }
  return tube;
}

} // namespace

TEST_CASE("the same history gives the same bits, another gives others", "[column]") {
  const matter::Catalogue catalogue = small_catalogue();
  const column::Chemistry chemistry = small_chemistry(catalogue);
  const std::uint64_t once = column::state_hash(stood(chemistry, 150, 5, 60));
  CHECK(once == column::state_hash(stood(chemistry, 150, 5, 60)));
  CHECK(once != column::state_hash(stood(chemistry, 151, 5, 60)));
  column::Chemistry unprepared = chemistry;
  unprepared.collisions.clear();
  CHECK(once == column::state_hash(stood(unprepared, 150, 5, 60)));
}

TEST_CASE("halving the step moves no grain size that an eye could tell", "[column]") {
  const matter::Catalogue catalogue = small_catalogue();
  const column::Chemistry chemistry = small_chemistry(catalogue);
  for (const double strength : {60.0, 110.0, 150.0, 250.0}) {
    const column::Column usual = stood(chemistry, strength, 0.5);
    const column::Column fine = stood(chemistry, strength, 0.25);
    const column::Column coarse = stood(chemistry, strength, 20); // the column chooses its own steps
    CHECK(mean_log_radius(coarse, catalogue, flocs) ==
          Approx(mean_log_radius(usual, catalogue, flocs)).margin(0.05));
    // The eye tells sizes apart by a third or so; the solver is held to 5 %.
    CHECK(mean_log_radius(usual, catalogue, flocs) ==
          Approx(mean_log_radius(fine, catalogue, flocs)).margin(0.05));
    const double settled = usual.sediment.populations[flocs].total_g();
    const double all = column::whole(usual, catalogue).populations[flocs].total_g();
    CHECK(settled / all == Approx(fine.sediment.populations[flocs].total_g() / all).margin(0.03));
    CHECK(settled / all == Approx(coarse.sediment.populations[flocs].total_g() / all).margin(0.03));
  }
}

TEST_CASE("a gentle addition stays a layer of its own, by density", "[column]") {
  const matter::Catalogue catalogue = small_catalogue();
  const column::Chemistry chemistry = small_chemistry(catalogue);
  column::Column tube = tube_with(catalogue, liquid(catalogue, 3, 22, 0.1));
  column::pour_in(tube, liquid(catalogue, 3, 22, 1.0), true, catalogue); // heavy: goes under
  column::advance(tube, chemistry, column::Surroundings{}, 300);
  CHECK(tube.layers.front().molar(salt) == Approx(1.0).epsilon(0.01));
  CHECK(tube.layers.back().molar(salt) == Approx(0.1).epsilon(0.01));
  column::Surroundings inverted;
  inverted.inverting = true;
  inverted.shear_per_s = 150;
  column::advance(tube, chemistry, inverted, 5);
  CHECK(tube.layers.front().molar(salt) == Approx(0.55).epsilon(0.01));
  CHECK(tube.layers.back().molar(salt) == Approx(0.55).epsilon(0.01));
}

TEST_CASE("swirling mixes in part, inverting wholly", "[column]") {
  const matter::Catalogue catalogue = small_catalogue();
  const column::Chemistry chemistry = small_chemistry(catalogue);
  column::Column tube = tube_with(catalogue, liquid(catalogue, 4, 22, 0.30));
  column::pour_in(tube, liquid(catalogue, 4, 22, 0.28), true, catalogue);
  column::Surroundings swirl;
  swirl.shear_per_s = 150;
  column::advance(tube, chemistry, swirl, 3);
  const double left = tube.layers.front().molar(salt) - tube.layers.back().molar(salt);
  CHECK(left > 0.002);
  CHECK(left < 0.0199);
}

TEST_CASE("settled grains lie on the bottom and come up again when inverted", "[column]") {
  const matter::Catalogue catalogue = small_catalogue();
  const column::Chemistry chemistry = small_chemistry(catalogue);
  matter::Mixture urine = liquid(catalogue, 6, 22);
  urine.populations.of(grains).grams[6] = 2e-3; // 16 um
  column::Column tube = tube_with(catalogue, urine);
  column::advance(tube, chemistry, column::Surroundings{}, 1200);
  CHECK(tube.sediment.populations[grains].total_g() > 1.8e-3);
  CHECK(tube.sediment.volume_ml > 0);
  CHECK(tube.volume_ml() == Approx(6).epsilon(1e-9));
  column::Surroundings swirl;
  swirl.shear_per_s = 150;
  column::Column swirled = tube;
  column::advance(swirled, chemistry, swirl, 5);
  CHECK(swirled.sediment.populations[grains].total_g() < 0.8 * tube.sediment.populations[grains].total_g());
  CHECK(swirled.sediment.populations[grains].total_g() > 0.2 * tube.sediment.populations[grains].total_g());
  column::Surroundings inverted = swirl;
  inverted.inverting = true;
  column::advance(tube, chemistry, inverted, 5);
  CHECK(tube.sediment.populations[grains].total_g() < 1e-5);
  CHECK(tube.layers.back().populations[grains].total_g() >
        0.5 * tube.layers.front().populations[grains].total_g());
}
