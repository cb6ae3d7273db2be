// Heller's ring: white within 3 min where urine lies on concentrated nitric acid, least protein 10 to 20
// mg/dL: H. Varley, Practical Clinical Biochemistry, 4th ed. 1967, from memory.
#include "tests/published/protein_support.hpp"

#include <catch2/catch.hpp>

using namespace matula;
using test::by_the_book;
using test::rung;

TEST_CASE("Heller: a ring from 10 to 20 mg/dL on, none below, more protein more ring") {
  const auto& book = by_the_book("heller");
  CHECK(rung(book, 0).read.grade == reading::Grade::Negative);
  CHECK(rung(book, 5).read.grade == reading::Grade::Negative);
  CHECK(rung(book, 20).read.grade > reading::Grade::Negative);
  double before = 0;
  for (const double mg_per_dl : {5, 10, 20, 50, 100, 200}) {
    CAPTURE(mg_per_dl);
    const double now = rung(book, mg_per_dl).seen.colour_strength;
    CHECK(now > before);
    before = now;
  }
}

TEST_CASE("Heller: shaken together there is no ring") {
  auto shaken = by_the_book("heller");
  for (auto& step : shaken.steps) {
    step.gently = false;
  }
  scoring::RecipeStep mix = shaken.steps.front();
  mix.kind = scoring::StepKind::Mix;
  mix.manner = bench::Manner::Invert;
  mix.seconds = 5;
  shaken.steps.insert(shaken.steps.end() - 1, mix); // before the wait
  CHECK(rung(shaken, 100).read.grade == reading::Grade::Negative);
}
