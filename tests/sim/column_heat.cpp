// Flame, bath, boiling, and the cool lower half that a learner compares with.
#include "column_support.hpp"

#include <catch2/catch.hpp>

using namespace column_support;

TEST_CASE("a tube boiled at the top keeps a cool bottom", "[column]") {
  const matter::Catalogue catalogue = small_catalogue();
  const column::Chemistry chemistry = small_chemistry(catalogue);
  column::Column tube = tube_with(catalogue, liquid(catalogue, 8, 22));
  const double level_mm = tube.shape.level_mm(8);
  column::Surroundings flame;
  flame.flame_power_w = 50;
  flame.flame_from_mm = 0.67 * level_mm;
  flame.flame_to_mm = level_mm;
  column::advance(tube, chemistry, flame, 60);
  CHECK(tube.layers.back().temperature_c > 99);
  CHECK(tube.boiling > 0.3);
  // The lower third is the control: below the 60 C at which protein sets, and near where it began.
  for (std::size_t i = 0; i < tube.layers.size() / 3; ++i) {
    CHECK(tube.layers[i].temperature_c < 35);
  }
}

TEST_CASE("heat from below carries the whole column along", "[column]") {
  const matter::Catalogue catalogue = small_catalogue();
  const column::Chemistry chemistry = small_chemistry(catalogue);
  column::Column tube = tube_with(catalogue, liquid(catalogue, 6, 22));
  column::Surroundings flame;
  flame.flame_power_w = 40;
  flame.flame_from_mm = 0;
  flame.flame_to_mm = 12;
  column::advance(tube, chemistry, flame, 30);
  const double mean = column::mean_temperature_c(tube);
  CHECK(mean > 60);
  CHECK(std::abs(tube.layers.back().temperature_c - mean) < 12);
  CHECK(std::abs(tube.layers.front().temperature_c - mean) < 12);
}

TEST_CASE("a bath warms a 14 mm tube with its time constant and never boils it", "[column]") {
  const matter::Catalogue catalogue = small_catalogue();
  const column::Chemistry chemistry = small_chemistry(catalogue);
  column::Column tube = tube_with(catalogue, liquid(catalogue, 5.5, 22));
  column::Surroundings bath;
  bath.bath_c = 100;
  column::advance(tube, chemistry, bath, 35); // 35 s: fitted here
  CHECK(column::mean_temperature_c(tube) == Approx(100 - 78 * std::exp(-1.0)).margin(0.5));
  column::advance(tube, chemistry, bath, 300);
  CHECK(column::mean_temperature_c(tube) > 99);
  CHECK(tube.boiling == 0);
  CHECK(tube.volume_ml() == Approx(5.5));
}

TEST_CASE("flame power warms by its joules and stops at the boil", "[column]") {
  const matter::Catalogue catalogue = small_catalogue();
  const column::Chemistry chemistry = small_chemistry(catalogue);
  column::Column tube = tube_with(catalogue, liquid(catalogue, 5, 22));
  column::Surroundings flame;
  flame.flame_power_w = 50;
  flame.flame_to_mm = 100;
  column::advance(tube, chemistry, flame, 10);
  // 500 J into 5 mL of 4.18 J/mL/K is 23.9 K, less a little lost to the room.
  CHECK(column::mean_temperature_c(tube) == Approx(22 + 23.9).margin(0.5));
  column::advance(tube, chemistry, flame, 60);
  for (const matter::Mixture& layer : tube.layers) {
    CHECK(layer.temperature_c <= 100);
  }
  CHECK(tube.boiling > 0.5);
}

TEST_CASE("a tube at rest cools towards the room, not below", "[column]") {
  const matter::Catalogue catalogue = small_catalogue();
  const column::Chemistry chemistry = small_chemistry(catalogue);
  column::Column tube = tube_with(catalogue, liquid(catalogue, 5, 95));
  column::Surroundings rest;
  double last = 95;
  for (int minute = 0; minute < 30; ++minute) {
    column::advance(tube, chemistry, rest, 60);
    const double now = column::mean_temperature_c(tube);
    CHECK(now < last);
    CHECK(now > 22);
    last = now;
  }
  CHECK(last < 45);
}

TEST_CASE("a tube filled too high boils over, one half full does not", "[column]") {
  const matter::Catalogue catalogue = small_catalogue();
  const column::Chemistry chemistry = small_chemistry(catalogue);
  column::Surroundings flame;
  flame.flame_power_w = 200;
  flame.flame_to_mm = 200;
  column::Column full = tube_with(catalogue, liquid(catalogue, 18, 90));
  column::advance(full, chemistry, flame, 20);
  CHECK(full.boil_over_ml > 0.5);
  CHECK(full.volume_ml() + full.boil_over_ml < 18);
  column::Column half = tube_with(catalogue, liquid(catalogue, 9, 90));
  column::advance(half, chemistry, flame, 20);
  CHECK(half.boil_over_ml == 0);
}
