// Heat and acetic acid, done by the book, against two grade tables in print (teaching pages, mg/dL): 1+ cloud
// < 100, 2+ granular 100-200, 3+ flocculent 200-400, 4+ solid > 500; and 2+ 100-250, 3+ 250-500, 4+ > 500.
// The doses lie where the two agree.
#include "tests/published/protein_support.hpp"

#include <catch2/catch.hpp>

using namespace matula;
using test::by_the_book;
using test::rung;
using test::word;

TEST_CASE("heat test: the reader gives the grade at the middle of each band") {
  const auto& book = by_the_book("heat");
  CHECK(word(rung(book, 0)) == "negative");
  CHECK(word(rung(book, 5)) == "negative");
  CHECK(word(rung(book, 20)) == "trace");
  for (const double mg_per_dl : {50.0, 65.0}) {
    CHECK(word(rung(book, mg_per_dl)) == "1+");
  }
  for (const double mg_per_dl : {150.0, 175.0}) {
    CHECK(word(rung(book, mg_per_dl)) == "2+");
  }
  for (const double mg_per_dl : {300.0, 350.0}) {
    CHECK(word(rung(book, mg_per_dl)) == "3+");
  }
  for (const double mg_per_dl : {600.0, 1000.0}) {
    CHECK(word(rung(book, mg_per_dl)) == "4+");
  }
}

TEST_CASE("heat test: more protein never reads less") {
  auto before = reading::Grade::Negative;
  for (const double mg_per_dl :
       {0, 5, 10, 20, 30, 50, 80, 100, 150, 190, 250, 300, 350, 400, 500, 700, 1000}) {
    const auto grade = rung(by_the_book("heat"), mg_per_dl).read.grade;
    CAPTURE(mg_per_dl);
    CHECK(grade >= before);
    before = grade;
  }
}

TEST_CASE("heat test: brief heating shows less") {
  auto brief = by_the_book("heat");
  for (auto& step : brief.steps) {
    if (step.kind == scoring::StepKind::Boil) {
      step.kind = scoring::StepKind::Heat;
      step.seconds = 15;
    }
  }
  for (const double mg_per_dl : {30.0, 150.0}) {
    CHECK(rung(brief, mg_per_dl).read.intensity < rung(by_the_book("heat"), mg_per_dl).read.intensity);
  }
}

// Phosphates fall out when an alkaline urine is boiled and clear with acid: common practice.
TEST_CASE("heat test: without acid an alkaline urine clouds, and acid clears it") {
  auto urine = test::shipped().plain;
  urine.target_ph = 7.6;
  for (auto& [key, mmol_per_l] : urine.mmol_per_l) {
    mmol_per_l = key == "phosphate" ? 35 : key == "calcium" ? 5 : mmol_per_l;
  }
  auto without = by_the_book("heat");
  without.steps.resize(2); // poured and boiled
  CHECK(rung(without, 0, urine).read.grade > reading::Grade::Negative);
  CHECK(word(rung(by_the_book("heat"), 0, urine)) == "negative");
}
