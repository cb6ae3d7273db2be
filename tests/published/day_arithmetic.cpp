// The sums of a 24-hour collection against worked examples.
#include "engine/reception/day.hpp"

#include <catch2/catch.hpp>

using namespace matula;

TEST_CASE("Grams in 24 hours: worked examples") {
  // 3.5 g/L in 1.2 L is 4.2 g: the arithmetic of the Esbach reading (H. Varley 1967, from memory).
  CHECK(reception::grams(3.5, 1200) == Approx(4.2));
  // 0.8 g/dL in 9 dL is 7.2 g; 0.8 g/dL is 8 g/L.
  CHECK(reception::grams(8, 900) == Approx(7.2));
}

TEST_CASE("Creatinine index and its ranges as printed") {
  // Men 14 to 26, women 11 to 20 mg/kg in 24 h: teaching pages.
  const auto& book = reception::shipped_book();
  REQUIRE(book);
  CHECK(book->day.index.at("male").low_mg_per_kg == 14);
  CHECK(book->day.index.at("male").high_mg_per_kg == 26);
  CHECK(book->day.index.at("female").low_mg_per_kg == 11);
  CHECK(book->day.index.at("female").high_mg_per_kg == 20);
  CHECK(reception::creatinine_index(1.4, 70) == Approx(20));
}

TEST_CASE("Daily protein: normal below 150 mg, minimal below 0.5 g, heavy above 4 g or, in other books, 3 to "
          "3.5 g") {
  // S.R. Kawthalkar (4 g) and other textbooks (3 to 3.5 g), from memory.
  const auto& book = reception::shipped_book();
  REQUIRE(book);
  REQUIRE(book->day.bands.size() == 4);
  CHECK(book->day.bands[0].up_to_g == 0.15);
  CHECK(book->day.bands[1].up_to_g == 0.5);
  CHECK(book->day.bands[2].up_to_g == 4);
  CHECK(book->day.bands[2].also_up_to_g == 3);
}
