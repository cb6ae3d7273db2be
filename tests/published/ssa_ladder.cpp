// Sulfosalicylic acid, done by the book, against the grade tables in print (mg/dL): negative < 6, trace 6-30,
// 1+ 30-100 cloud without grains, 2+ 100-200 grains, 3+ 200-400 flakes, 4+ > 400 clumps (S.K. Strasinger,
// Urinalysis and Body Fluids, from memory); trace 20, 1+ 50, 2+ 200, 3+ 500, 4+ >= 1000 (N.A. Brunzel, from
// memory). The doses below lie where the two agree.
#include "tests/published/protein_support.hpp"

#include <catch2/catch.hpp>

using namespace matula;
using test::by_the_book;
using test::rung;
using test::word;

TEST_CASE("acid test: the reader gives the grade at the middle of each band") {
  const auto& book = by_the_book("ssa");
  CHECK(word(rung(book, 0)) == "negative");
  CHECK(word(rung(book, 3)) == "negative");
  for (const double mg_per_dl : {15.0, 20.0}) {
    CHECK(word(rung(book, mg_per_dl)) == "trace");
  }
  for (const double mg_per_dl : {45.0, 50.0, 65.0}) {
    CHECK(word(rung(book, mg_per_dl)) == "1+");
  }
  for (const double mg_per_dl : {125.0, 150.0, 175.0}) {
    CHECK(word(rung(book, mg_per_dl)) == "2+");
  }
  for (const double mg_per_dl : {250.0, 300.0, 350.0}) {
    CHECK(word(rung(book, mg_per_dl)) == "3+");
  }
  for (const double mg_per_dl : {600.0, 1000.0}) {
    CHECK(word(rung(book, mg_per_dl)) == "4+");
  }
}

TEST_CASE("acid test: the least protein seen is 5-10 mg/dL, and more protein never reads less") {
  const auto& book = by_the_book("ssa");
  CHECK(rung(book, 5).read.grade == reading::Grade::Negative);
  CHECK(rung(book, 10).read.grade == reading::Grade::Trace);
  auto before = reading::Grade::Negative;
  for (const double mg_per_dl :
       {0, 5, 10, 20, 40, 60, 80, 100, 125, 150, 190, 250, 320, 380, 450, 700, 1000, 2000}) {
    const auto grade = rung(book, mg_per_dl).read.grade;
    CAPTURE(mg_per_dl);
    CHECK(grade >= before);
    before = grade;
  }
}

TEST_CASE("acid test: what there is to see fits the words of the grade") {
  const auto& book = by_the_book("ssa");
  const auto trace = rung(book, 15).seen;
  CHECK(trace.print_contrast > 0.75);
  CHECK(trace.piece_size_mm == 0);
  const auto one = rung(book, 60).seen;
  CHECK(one.granularity < 0.03);
  CHECK(one.print_contrast > 0.15);
  const auto two = rung(book, 150).seen;
  CHECK(two.piece_size_mm > 0.15);
  CHECK(two.piece_size_mm < 0.5);
  CHECK(two.settled_share < 0.1);
  const auto three = rung(book, 300).seen;
  CHECK(three.piece_size_mm > 0.6);
  CHECK(three.clot_fraction < 0.2);
  CHECK(rung(book, 600).seen.clot_fraction > 0.5);
}

TEST_CASE("acid test: read at 1 min instead of 10 it shows less") {
  auto hasty = by_the_book("ssa");
  for (auto& step : hasty.steps) {
    if (step.kind == scoring::StepKind::Wait) {
      step.seconds = 60;
    }
  }
  for (const double mg_per_dl : {12.0, 30.0, 150.0}) {
    CHECK(rung(hasty, mg_per_dl).read.intensity < rung(by_the_book("ssa"), mg_per_dl).read.intensity);
  }
  CHECK(rung(hasty, 20).seen.luminance_on_black < 0.8 * rung(by_the_book("ssa"), 20).seen.luminance_on_black);
}

// Contrast media cloud with sulfosalicylic acid for up to three days: common practice.
TEST_CASE("acid test: contrast medium clouds without any protein") {
  auto urine = test::shipped().plain;
  urine.mmol_per_l.emplace_back("contrast_medium", 100);
  CHECK(rung(by_the_book("ssa"), 0, urine).read.grade > reading::Grade::Negative);
  CHECK(word(rung(by_the_book("heat"), 0, urine)) == "negative");
}

// A urine hazy before the test (a few million cells a mL) clouds on black too; the boiled tube carries its
// own control.
TEST_CASE("native haze: a false trace with acid, none with heat") {
  auto urine = test::shipped().plain;
  urine.particles_mg_per_l.emplace_back("cells", 1000);
  CHECK(rung(by_the_book("ssa"), 0, urine).read.grade > reading::Grade::Negative);
  CHECK(word(rung(by_the_book("heat"), 0, urine)) == "negative");
}
