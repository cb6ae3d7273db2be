// Gerhardt's test done by the book. Least acetoacetate 25 to 50 mg/dL; acetone and beta-hydroxybutyrate
// negative: H. Varley 1967 and S.K. Strasinger, from memory. Salicylate violet, survives boiling;
// acetoacetate loses its colour when boiled: common practice, with the rate of decay of R.W. Hay and M.A.
// Bond, Aust. J. Chem. 20 (1967) 1823.
#include "tests/published/protein_support.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

using namespace matula;
using test::rung;

namespace {

specimen::Specimen with(const std::string& key, double mg_per_dl) {
  auto urine = test::shipped().plain;
  if (mg_per_dl > 0) {
    urine.mg_per_dl.emplace_back(key, mg_per_dl);
  }
  return urine;
}

scoring::LadderRung done(const std::string& recipe, const std::string& key, double mg_per_dl) {
  return rung(test::by_the_book(recipe), 0, with(key, mg_per_dl));
}

reading::Grade grade(const std::string& recipe, const std::string& key, double mg_per_dl) {
  return done(recipe, key, mg_per_dl).read.grade;
}

double hue_deg(const optics::Lab& lab) {
  const double degrees = std::atan2(lab.b, lab.a) * 180 / 3.14159265358979;
  return degrees < 0 ? degrees + 360 : degrees;
}

/// mmol of a substance in the finished tube.
double left_mmol(const scoring::Recipe& recipe, const std::string& key, double mg_per_dl) {
  const auto setup = scoring::ladder_setup(*test::shipped().world, with(key, mg_per_dl), recipe, 0);
  const auto tube = scoring::ladder_tube(setup, recipe);
  REQUIRE(tube.stopped_because.empty());
  const auto& catalogue = test::shipped().world->catalogue;
  return column::whole(tube.state.vessels.at(tube.vessel).column, catalogue)
      .mmol[*catalogue.find_species(key)];
}

/// The boil check up to the cooled tube, without its iron.
scoring::Recipe only_boiled(double seconds, bool acid) {
  scoring::Recipe recipe = test::by_the_book("gerhardt_boiled");
  auto& steps = recipe.steps;
  steps.erase(std::find_if(steps.begin(), steps.end(),
                           [](const auto& step) { return step.reagent == "ferric_chloride_10"; }),
              steps.end());
  for (auto& step : steps) {
    step.seconds = step.kind == scoring::StepKind::Boil ? seconds : step.seconds;
  }
  if (!acid) {
    steps.erase(std::find_if(steps.begin(), steps.end(),
                             [](const auto& step) { return step.reagent == "nitric_acid_10"; }));
  }
  return recipe;
}

} // namespace

TEST_CASE("Gerhardt: the least acetoacetate seen is 25 to 50 mg/dL") {
  CHECK(grade("gerhardt", "acetoacetate", 0) == reading::Grade::Negative);
  CHECK(grade("gerhardt", "acetoacetate", 20) == reading::Grade::Negative);
  CHECK(grade("gerhardt", "acetoacetate", 50) > reading::Grade::Negative);
  CHECK(done("gerhardt", "acetoacetate", 400).read.intensity > 2.4); // the darkest word
  auto before = reading::Grade::Negative;
  for (const double mg_per_dl : {0, 20, 50, 80, 120, 200, 400}) {
    CAPTURE(mg_per_dl);
    const auto now = grade("gerhardt", "acetoacetate", mg_per_dl);
    CHECK(now >= before);
    before = now;
  }
}

TEST_CASE("Gerhardt: acetone and beta-hydroxybutyrate give nothing") {
  CHECK(grade("gerhardt", "acetone", 100) == reading::Grade::Negative);
  CHECK(grade("gerhardt", "beta_hydroxybutyrate", 600) == reading::Grade::Negative);
}

TEST_CASE(
    "Gerhardt: wine red with acetoacetate, violet with salicylate, green for a while with phenylpyruvate") {
  const double wine = hue_deg(done("gerhardt", "acetoacetate", 150).seen.colour_on_white);
  auto drops = test::by_the_book("gerhardt"); // four drops
  for (auto& step : drops.steps) {
    step.volume_ml = step.reagent == "ferric_chloride_10" ? 0.1 : step.volume_ml;
  }
  const double violet = hue_deg(rung(drops, 0, with("salicylate", 20)).seen.colour_on_white);
  const double green = hue_deg(done("gerhardt", "phenylpyruvate", 100).seen.colour_on_white);
  // With all the iron of the recipe its yellow takes some blue out of the violet: purple.
  const double purple = hue_deg(done("gerhardt", "salicylate", 20).seen.colour_on_white);
  const double port = hue_deg(done("gerhardt", "acetoacetate", 300).seen.colour_on_white);
  CAPTURE(wine, port, violet, purple, green);
  CHECK(wine > 10);
  CHECK(wine < 45);
  CHECK(port < 35);
  CHECK(violet > 290);
  CHECK((purple > 300 || purple < 20));
  CHECK(green > 100);
  CHECK(green < 220);
  CHECK(grade("gerhardt", "salicylate", 20) > reading::Grade::Negative);
}

TEST_CASE("Gerhardt: the first drops cloud with phosphate, an excess clears") {
  auto few = test::by_the_book("gerhardt");
  few.steps.resize(3);
  few.steps[1].volume_ml = 0.15;
  const auto cloudy = rung(few, 0).seen;
  const auto clear = rung(test::by_the_book("gerhardt"), 0).seen;
  CHECK(cloudy.print_contrast < 0.5);
  CHECK(clear.print_contrast > 0.8);
}

TEST_CASE("Boil check: acetoacetate loses its colour, salicylate keeps it") {
  CHECK(grade("gerhardt", "acetoacetate", 150) > reading::Grade::Negative);
  CHECK(grade("gerhardt_boiled", "acetoacetate", 150) == reading::Grade::Negative);
  CHECK(grade("gerhardt", "salicylate", 30) > reading::Grade::Negative);
  CHECK(grade("gerhardt_boiled", "salicylate", 30) > reading::Grade::Negative);
}

// Free acid gone by half in 140 min at 37 °C, 99.2 kJ/mol; ion in 130 h, 95.8 kJ/mol; pKa 3.58 (Hay and Bond
// 1967 and encyclopaedias): at 100 °C half is gone in 11.7 min at pH 6, in 1.8 min at pH 4.5. A minute at pH
// 6 takes 6 %.
TEST_CASE("Boil check: one minute at the urine's own pH takes next to nothing, five with acid nearly all") {
  const double before = 5 * 150 / 102.09 / 100; // mmol in 5 mL
  const double minute = left_mmol(only_boiled(60, false), "acetoacetate", 150) / before;
  const double five = left_mmol(only_boiled(300, true), "acetoacetate", 150) / before;
  CAPTURE(minute, five);
  CHECK(minute > 0.8); // 0.94 of the boil itself, less what warming and cooling take
  CHECK(minute < 0.97);
  CHECK(five < 0.15);
}
