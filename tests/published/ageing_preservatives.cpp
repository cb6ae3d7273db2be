// What each way of keeping protects and what it spoils, on the computed specimen. Doses and effects: U.S.
// Navy hospital corps teaching; WHO, Manual of Basic Techniques for a Health Laboratory, 2003, p. 93; Lab.
// Med. 18 (1987) 382; S.K. Strasinger 2014 and common practice where these are silent (from memory).
#include "ageing_support.hpp"
#include "protein_support.hpp"

#include "engine/scenario/scenario.hpp"
#include "engine/sitting/setup.hpp"
#include "sim/matter/density.hpp"
#include "sim/reading/reference_reader.hpp"

#include <catch2/catch.hpp>

using namespace matula;
using namespace matula::test;

namespace {

/// Grams of a solid make so many millilitres of what is in its bottle.
double ml_of(const std::string& reagent, double grams) {
  return grams / world().catalogue.find_reagent(reagent)->grams_per_ml;
}

struct Dose {
  const char* reagent = nullptr;
  double ml_per_100_ml = 0;
};

bench::Setup setup_of(specimen::Specimen s, const Dose& dose, double hours, double temperature_c,
                      bool open = false) {
  s.life = {{hours, temperature_c, open, 0}};
  if (dose.reagent != nullptr) {
    s.preservatives = {{0.0, dose.reagent, dose.ml_per_100_ml}};
  }
  scenario::Scenario scenario;
  scenario.key = "kept";
  scenario.specimen = s;
  for (const auto& reagent : shipped().world->catalogue.reagents) {
    scenario.reagents_out.push_back(reagent.key);
  }
  bench::Setup setup = sitting::make_setup(*shipped().world, scenario);
  setup.tube_count = 1;
  return setup;
}

/// The whole specimen as it comes to the bench.
matter::Mixture brought(const specimen::Specimen& s, const Dose& dose, double hours, double temperature_c,
                        bool open = false) {
  const bench::State state = bench::begin(setup_of(s, dose, hours, temperature_c, open));
  return column::whole(state.vessels.at("specimen").column, world().catalogue);
}

reading::Grade grade(const bench::Setup& setup, const std::string& test) {
  const scoring::Recipe& recipe = by_the_book(test);
  const scoring::BookTube tube = scoring::do_by_the_book(setup, recipe);
  INFO(tube.stopped_because);
  REQUIRE(tube.stopped_because.empty());
  const auto scale = shipped().standards.rules.find_test(test)->scale;
  return scoring::read_vessel(tube.state, setup, shipped().world->thresholds, scale, tube.vessel).grade;
}

double solid_mg_per_l(const matter::Mixture& liquid, const std::string& key) {
  return liquid.populations[kind(key)].total_g() / liquid.volume_ml * 1e6;
}

double specific_gravity(matter::Mixture liquid, double temperature_c) {
  liquid.temperature_c = temperature_c;
  return matter::density_kg_m3(liquid, world().catalogue) / matter::water_density_kg_m3(temperature_c);
}

/// An infected, bloody, sugary, ketotic urine in which everything can go wrong.
specimen::Specimen troubled(double ph = 6.5) {
  specimen::Specimen s = plain_urine(ph);
  s.mmol_per_l.emplace_back("glucose", 4);
  s.mmol_per_l.emplace_back("nitrate", 1);
  s.cells_per_ul = {{"erythrocytes", 300}, {"leucocytes", 400}, {"hyaline_casts", 0.5}};
  s.growing_per_ml = {{"escherichia", 1e5}, {"proteus", 1e4}};
  return s;
}

double share_left(const matter::Mixture& liquid, const specimen::Specimen& s, const std::string& key) {
  return per_ml(liquid, key) / per_ml(specimen::make_liquid(s, world().catalogue), key);
}

const Dose none;

} // namespace

TEST_CASE("Kept by nothing: a day on the bench ruins an infected specimen") {
  const specimen::Specimen s = troubled();
  const matter::Mixture old = brought(s, none, 24, 22);
  CHECK(per_ml(old, "escherichia") > 1e7);
  CHECK(mmol_per_l(old, "glucose") < 3.5);
  CHECK(mmol_per_l(old, "nitrite") > 0.02);
  CHECK(share_left(old, s, "hyaline_casts") < 0.3);
}

TEST_CASE("Cold: keeps nearly everything for a day, clouds and weighs the specimen until it is warmed") {
  const specimen::Specimen s = troubled();
  const matter::Mixture cold = brought(s, none, 24, 4);
  CHECK(per_ml(cold, "escherichia") < 3e5); // 22 °C: beyond 1e7, above
  CHECK(mmol_per_l(cold, "glucose") > 3.9);
  CHECK(mmol_per_l(cold, "urea") > 275);
  CHECK(share_left(cold, s, "leucocytes") > 0.9);

  specimen::Specimen strong = plain_urine(5.3); // concentrated and acid
  for (auto& [key, mmol] : strong.mmol_per_l) {
    mmol *= 1.4;
  }
  strong.mmol_per_l[10].second = 5; // urate
  const bench::Setup setup = setup_of(strong, none, 8, 4);
  bench::State state = bench::begin(setup);
  const auto clarity = [&] {
    return reading::read_clarity(
        bench::look(state, setup, "specimen", {appearance::Card::Printed, optics::Lamp::Daylight}),
        world().thresholds);
  };
  bench::perform(state, setup, bench::Mix{"specimen", bench::Manner::Invert, 10});
  const matter::Mixture chilled = column::whole(state.vessels.at("specimen").column, world().catalogue);
  CHECK(solid_mg_per_l(chilled, "urate") > 100);
  CHECK(clarity() != "clear");
  // A cold specimen reads high on a float of 22 °C.
  const double cold_density = matter::density_kg_m3(chilled, world().catalogue);
  matter::Mixture warmed = chilled;
  warmed.temperature_c = 22;
  CHECK(cold_density - matter::density_kg_m3(warmed, world().catalogue) > 1.0);
  // Urates clear in a bath at 40 °C.
  bench::perform(state, setup, bench::Protect{true, true});
  bench::perform(state, setup, bench::SetBath{40});
  bench::perform(state, setup, bench::Pour{"specimen", "tube-1", 10, false});
  bench::perform(state, setup, bench::Wait{120});
  bench::perform(state, setup, bench::Move{"tube-1", bench::Place::Bath});
  bench::perform(state, setup, bench::Wait{900});
  const matter::Mixture tube = column::whole(state.vessels.at("tube-1").column, world().catalogue);
  CHECK(solid_mg_per_l(tube, "urate") < 0.05 * solid_mg_per_l(chilled, "urate"));
}

TEST_CASE("Thymol: stops growth; in excess it clouds the acid test") {
  const specimen::Specimen s = troubled();
  const Dose right{"thymol", ml_of("thymol", 0.1)};
  const matter::Mixture kept_one = brought(s, right, 24, 22);
  CHECK(per_ml(kept_one, "escherichia") < 2e5);
  CHECK(mmol_per_l(kept_one, "glucose") > 3.9);
  CHECK(ph(kept_one) == Approx(6.5).margin(0.15));
  const specimen::Specimen clean = plain_urine(6.0);
  CHECK(grade(setup_of(clean, right, 2, 22), "ssa") == reading::Grade::Negative);
  CHECK(grade(setup_of(clean, {"thymol", ml_of("thymol", 0.5)}, 2, 22), "ssa") >= reading::Grade::Trace);
}

TEST_CASE("Toluene: shuts the air out and keeps the ketones, does not stop what grows already") {
  specimen::Specimen s = plain_urine(6.0);
  s.mmol_per_l.emplace_back("acetone", 5);
  s.mmol_per_l.emplace_back("homogentisate", 10);
  const Dose film{"toluene", 1};
  const matter::Mixture open = brought(s, none, 12, 22, true);
  const matter::Mixture under = brought(s, film, 12, 22, true);
  CHECK(mmol_per_l(open, "acetone") < 2.5);
  CHECK(mmol_per_l(under, "acetone") > 4.5);
  CHECK(mmol_per_l(under, "homogentisate_polymer") < 0.2 * mmol_per_l(open, "homogentisate_polymer"));
  const specimen::Specimen infected = troubled();
  const double grown = per_ml(brought(infected, film, 12, 25), "escherichia");
  CHECK(grown > 1e6);
  CHECK(grown < per_ml(brought(infected, none, 12, 25), "escherichia"));
}

TEST_CASE("Fluoride: stops glycolysis and urease, not yeast, and weighs on the float") {
  const Dose dose{"sodium_fluoride_powder", ml_of("sodium_fluoride_powder", 1.0)};
  const specimen::Specimen s = troubled();
  const matter::Mixture with = brought(s, dose, 24, 30);
  const matter::Mixture without = brought(s, none, 24, 30);
  CHECK(mmol_per_l(with, "glucose") > 3.9);
  CHECK(mmol_per_l(without, "glucose") < 2.5);
  CHECK(mmol_per_l(with, "urea") > 275);
  specimen::Specimen yeasty = plain_urine(6.0);
  yeasty.mmol_per_l.emplace_back("glucose", 4);
  yeasty.growing_per_ml = {{"candida", 1e6}};
  CHECK(mmol_per_l(brought(yeasty, dose, 24, 30), "glucose") < 1);
  // 1 % raises the specific gravity by about 0.010.
  const specimen::Specimen clean = plain_urine(6.0);
  CHECK(specific_gravity(brought(clean, dose, 1, 22), 20) -
            specific_gravity(brought(clean, none, 1, 22), 20) ==
        Approx(0.010).margin(0.0015));
}

TEST_CASE("Hydrochloric acid: keeps ammonia and calcium, destroys cells and drops uric acid") {
  const Dose dose{"hydrochloric_acid_6n", 2};
  const specimen::Specimen s = troubled();
  const matter::Mixture with = brought(s, dose, 24, 22);
  const matter::Mixture without = brought(s, none, 24, 30);
  CHECK(ph(with) < 3);
  CHECK(per_ml(with, "escherichia") < 1.1e5);
  CHECK(mmol_per_l(with, "ammonium") == Approx(30 * 100 / 102.0).epsilon(0.02));
  CHECK(mmol_per_l(without, "ammonium") > 35);
  CHECK(solid_mg_per_l(with, "calcium_phosphate") == 0);
  CHECK(share_left(with, s, "erythrocytes") < 0.05);
  CHECK(share_left(with, s, "hyaline_casts") < 0.05);
  CHECK(solid_mg_per_l(with, "uric_acid") > 50);
  CHECK(solid_mg_per_l(brought(plain_urine(6.5), none, 24, 22), "uric_acid") == 0);
}

TEST_CASE("Soda: keeps urobilinogen, clouds with phosphate and dissolves cells and casts") {
  const Dose dose{"sodium_carbonate", ml_of("sodium_carbonate", 0.33)}; // 5 g in a day's bottle
  specimen::Specimen s = troubled(5.5);
  s.mmol_per_l[7].second = 5; // calcium
  s.mg_per_dl = {{"urobilinogen", 5}};
  const matter::Mixture with = brought(s, dose, 24, 22);
  const matter::Mixture without = brought(s, none, 24, 22);
  CHECK(ph(with) > 8.5);
  CHECK(mmol_per_l(with, "urobilinogen") > 1.5 * mmol_per_l(without, "urobilinogen"));
  CHECK(solid_mg_per_l(with, "calcium_phosphate") > 50);
  CHECK(solid_mg_per_l(without, "calcium_phosphate") < 1);
  CHECK(share_left(with, s, "hyaline_casts") < 0.1);
  CHECK(share_left(with, s, "leucocytes") < 0.2);
}

TEST_CASE("Formalin: keeps cells and casts, reduces copper") {
  const Dose dose{"formalin_40", 0.5};
  const specimen::Specimen s = troubled(7.2);
  const matter::Mixture with = brought(s, dose, 24, 22);
  const matter::Mixture without = brought(s, none, 24, 22);
  for (const char* cell : {"erythrocytes", "leucocytes", "hyaline_casts"}) {
    INFO(cell);
    CHECK(share_left(with, s, cell) > 0.9);
    CHECK(share_left(without, s, cell) < 0.75);
  }
  CHECK(per_ml(with, "escherichia") < 1.2e5);
  const specimen::Specimen clean = plain_urine(6.0);
  CHECK(grade(setup_of(clean, none, 1, 22), "benedict") == reading::Grade::Negative);
  CHECK(grade(setup_of(clean, dose, 1, 22), "benedict") >= reading::Grade::Trace);
}

TEST_CASE("Boric acid: holds the count for a day and the sugar with it") {
  const Dose dose{"boric_acid", ml_of("boric_acid", 1.5)};
  const specimen::Specimen s = troubled();
  const matter::Mixture with = brought(s, dose, 24, 22);
  CHECK(per_ml(with, "escherichia") < 3e5);
  CHECK(per_ml(with, "escherichia") > 0.9e5);
  CHECK(mmol_per_l(with, "glucose") > 3.9);
  CHECK(share_left(with, s, "erythrocytes") > share_left(brought(s, none, 24, 22), s, "erythrocytes"));
  CHECK(ph(with) < 6.5);
}

TEST_CASE("Boric acid of 1.8 % keeps urine near pH 6: alkaline urine falls, acid urine hardly moves") {
  // S.K. Strasinger 2014, from memory: keeps the pH at about 6. Its pKa of 9.24 alone would do next to
  // nothing: 0.29 mol/L at pH 6 give off 0.2 mmol/L; it is the triborate (log K -6.9) that gives some.
  const Dose dose{"boric_acid", ml_of("boric_acid", 1.8)};
  const auto after = [&](double ph_before) {
    specimen::Specimen s = test::plain_urine(ph_before);
    return ph(brought(s, dose, 1, 22));
  };
  CHECK(after(5.0) == Approx(5.0).margin(0.1));
  CHECK(after(6.0) > 5.5);
  CHECK(after(6.0) < 5.95);
  CHECK(after(7.0) < 6.6);
  CHECK(after(7.0) > 5.8);
  CHECK(after(8.0) < 7.0);
}
