// The specimen's life on its way to the bench and in the vessels on it.
#include "bench_fixture.hpp"

#include "sim/matter/ph.hpp"
#include "sim/reading/reference_reader.hpp"

#include <catch2/catch.hpp>

using namespace matula;

namespace {

matter::Mixture cup(const bench::State& state) {
  return column::whole(state.vessels.at("specimen").column, test::world().catalogue);
}

double number_per_ml(const matter::Mixture& liquid, const std::string& key) {
  const auto kind = test::world().catalogue.find_particle(key).value();
  const matter::Population& p = liquid.populations[kind];
  return (p.grams[0] + 0.5 * p.grams[1]) / test::world().catalogue.particles[kind].bin_mass_g(0) /
         liquid.volume_ml;
}

bench::Setup infected() {
  bench::Setup setup = test::setup();
  setup.ageing = &test::world().ageing;
  setup.specimen.growing_per_ml = {{"escherichia", 1e5}};
  setup.specimen.cells_per_ul = {{"erythrocytes", 200}};
  return setup;
}

} // namespace

TEST_CASE("A specimen comes from the body and takes the temperature of its way") {
  bench::Setup setup = infected();
  setup.specimen.life = {{0.1, 22, true, 500}};
  const double soon = column::mean_temperature_c(bench::begin(setup).vessels.at("specimen").column);
  CHECK(soon > 30);
  CHECK(soon < 37);
  setup.specimen.life = {{12, 4, false, 0}};
  CHECK(column::mean_temperature_c(bench::begin(setup).vessels.at("specimen").column) ==
        Approx(4).margin(0.3));
}

TEST_CASE("Hours that stood are an open lit leg at the specimen's temperature") {
  bench::Setup stood = infected();
  stood.specimen.mg_per_dl.emplace_back("bilirubin", 3);
  bench::Setup leg = stood;
  stood.specimen.stood_hours = 3;
  const matter::Mixture m = cup(bench::begin(stood));
  const auto bilirubin = test::world().catalogue.find_species("bilirubin").value();
  CHECK(number_per_ml(m, "escherichia") > 1.2e5);
  CHECK(m.mmol[bilirubin] < 0.5 * cup(bench::begin(leg)).mmol[bilirubin]);
}

TEST_CASE("What lives in a cup lives on at the bench, the same for any split of the time") {
  const bench::Setup setup = infected();
  bench::State once = bench::begin(setup);
  bench::State often = once;
  const double before = number_per_ml(cup(once), "escherichia");
  bench::advance(once, setup, 7200);
  for (int i = 0; i < 80; ++i) {
    bench::advance(often, setup, 90);
  }
  CHECK(bench::state_hash(once) == bench::state_hash(often));
  CHECK(number_per_ml(cup(once), "escherichia") > 1.3 * before);
  CHECK(number_per_ml(cup(once), "erythrocytes") < 200e3);
}

TEST_CASE("A preservative is shaken in when it is added, not before") {
  bench::Setup early = infected();
  early.specimen.life = {{10, 30, false, 0}};
  bench::Setup late = early;
  early.specimen.preservatives = {{0, "thymol", 0.1}};
  late.specimen.preservatives = {{6, "thymol", 0.1}};
  const double kept = number_per_ml(cup(bench::begin(early)), "escherichia");
  const double grown = number_per_ml(cup(bench::begin(late)), "escherichia");
  CHECK(kept < 1.2e5);
  CHECK(grown > 5e5);
  CHECK(early.specimen.volume_ml < cup(bench::begin(early)).volume_ml);
}

TEST_CASE("Halving the turns of life and settling moves nothing that is read") {
  // The turns end with each leg: the same way in four legs as in one.
  bench::Setup whole = infected();
  whole.specimen.mmol_per_l.emplace_back("acetone", 4);
  bench::Setup cut = whole;
  whole.specimen.life = {{8, 22, true, 300}};
  cut.specimen.life = {};
  for (int i = 0; i < 32; ++i) {
    cut.specimen.life.push_back({0.25, 22, true, 300});
  }
  const matter::Mixture one = cup(bench::begin(whole));
  const matter::Mixture other = cup(bench::begin(cut));
  const auto acetone = test::world().catalogue.find_species("acetone").value();
  CHECK(other.mmol[acetone] == Approx(one.mmol[acetone]).epsilon(0.01));
  CHECK(number_per_ml(other, "escherichia") == Approx(number_per_ml(one, "escherichia")).epsilon(0.03));
  CHECK(number_per_ml(other, "erythrocytes") == Approx(number_per_ml(one, "erythrocytes")).epsilon(0.01));
  CHECK(matter::ph(other, test::world().catalogue) ==
        Approx(matter::ph(one, test::world().catalogue)).margin(0.01));
}

TEST_CASE("Many bacteria are seen as a haze, few are not") {
  // Seen from about 2-5e6/mL: common practice.
  const auto clarity = [](double per_ml) {
    bench::Setup setup = infected();
    setup.specimen.cells_per_ul.clear();
    setup.specimen.growing_per_ml = {{"escherichia", per_ml}};
    const bench::State state = bench::begin(setup);
    return reading::read_clarity(
        bench::look(state, setup, "specimen", {appearance::Card::Printed, optics::Lamp::Daylight}),
        test::world().thresholds);
  };
  CHECK(clarity(1e5) == "clear");
  CHECK(clarity(1e6) == "clear");
  CHECK(clarity(1e8) != "clear");
}

TEST_CASE("A boiled tube does not grow, one that was only warmed does") {
  const auto after_a_day = [](double bath_c) {
    bench::Setup setup = infected();
    setup.specimen.cells_per_ul.clear();
    setup.room_c = 30;
    bench::State state = bench::begin(setup);
    REQUIRE(bench::perform(state, setup, bench::Pour{"specimen", "tube-1", 5}).done);
    REQUIRE(bench::perform(state, setup, bench::SetBath{bath_c}).done);
    REQUIRE(bench::perform(state, setup, bench::Move{"tube-1", bench::Place::Bath}).done);
    REQUIRE(bench::perform(state, setup, bench::Wait{1200}).done);
    REQUIRE(bench::perform(state, setup, bench::Move{"tube-1", bench::Place::Rack}).done);
    REQUIRE(bench::perform(state, setup, bench::Wait{8 * 3600}).done);
    return number_per_ml(column::whole(state.vessels.at("tube-1").column, test::world().catalogue),
                         "escherichia");
  };
  CHECK(after_a_day(95) == 0);
  CHECK(after_a_day(40) > 1e6);
}
