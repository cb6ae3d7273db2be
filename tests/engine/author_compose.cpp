// "Make it look like this": what is wished is what the bench then shows, by another way than the search took.
#include "author_support.hpp"

#include "engine/author/compose.hpp"
#include "engine/generator/write.hpp"
#include "engine/practice/draws.hpp"
#include "engine/scoring/moments.hpp"
#include "engine/sitting/setup.hpp"

#include <cmath>

using namespace matula;

namespace {

author::Wish wished(const std::vector<std::string>& words) {
  const auto wish = author::wish_from(words, test::shelf());
  if (!wish) {
    FAIL(test::joined(wish.error()));
  }
  return *wish;
}

/// A scenario file with nothing but the composition.
std::string file_of(const author::Composition& made) {
  const auto& shelf = test::shelf();
  std::string text =
      "title = \"T\"\nlevel = \"first\"\nseed = 1\nstory = \"S\"\ndebrief = \"D\"\n[patient]\nname = \"N\"\n"
      "age_sex = \"30, male\"\nward = \"W\"\nrequest = \"R\"\nspecimen_note = \"P\"\n[specimen]\n"
      "volume = \"50 mL\"\ntemperature = \"22 C\"\n";
  text += "ph = " + generator::plain_number(made.specimen.target_ph, author::bare_figures) + "\n";
  text += "yellow = " + generator::plain_number(made.specimen.urochrome_a420, author::bare_figures) + "\n";
  std::string section;
  for (const auto& line : author::lines_of(made.specimen, *shelf.limits, shelf.world->catalogue)) {
    text += line.place.section == section ? "" : "[specimen." + line.place.section + "]\n";
    section = line.place.section;
    text += line.place.key + " = \"" + line.quantity + "\"\n";
  }
  std::vector<std::string> all;
  for (const auto& reagent : shelf.world->catalogue.reagents) {
    all.push_back(reagent.key);
  }
  return text +
         "[bench]\nroom = \"22 C\"\nurinometer_calibration = \"20 C\"\nreagents = " + generator::list(all) +
         "\n[asked]\ntests = [\"look\"]\n";
}

/// What a float shows in a jar of it brought to the float's own temperature.
double float_shows(const scenario::Scenario& scenario) {
  auto setup = sitting::make_setup(*test::shelf().world, scenario);
  setup.specimen.temperature_c = 20;
  setup.room_c = 20;
  auto state = bench::begin(setup);
  for (const bench::Action& action :
       std::vector<bench::Action>{bench::Pour{"specimen", "jar", 45, true}, bench::Float{"jar"},
                                  bench::ClearBubbles{}, bench::SpinFloat{}, bench::Wait{30}}) {
    REQUIRE(bench::perform(state, setup, action).done);
  }
  return bench::scale_view(state, setup).value().reading_at_surface;
}

/// Reads the file as any scenario is read and does every wished test on it by the book.
void check_shows(const author::Composition& made, const author::Wish& wish) {
  const auto& shelf = test::shelf();
  const auto read = scenario::parse(file_of(made), "made.toml", shelf.world->catalogue);
  REQUIRE(read);
  const auto setup = sitting::make_setup(*shelf.world, *read);
  for (const auto& [key, want] : wish.tests) {
    const auto& rule = *shelf.standards->rules.find_test(key);
    const auto tube = scoring::do_by_the_book(setup, shelf.standards->recipes.at(key));
    REQUIRE(tube.stopped_because.empty());
    const auto grade =
        scoring::read_vessel(tube.state, setup, shelf.world->thresholds, rule.scale, tube.vessel);
    INFO(key << " reads " << rule.word(grade.grade) << " (" << grade.intensity << ")");
    CHECK(static_cast<std::size_t>(grade.grade) == want.grade);
  }
  if (wish.gravity) {
    // Half a division of the float.
    CHECK(float_shows(*read) == Approx(*wish.gravity).margin(0.0005));
  }
  const auto derived = generator::derive(read->specimen, shelf.world->catalogue);
  CHECK(derived.added_sodium_mmol_per_l < 0.5);
  CHECK(derived.chloride_mmol_per_l > 0);
  if (wish.ph) {
    CHECK(derived.ph == Approx(*wish.ph).margin(0.03));
  }
}

} // namespace

TEST_CASE("a specimen with 2+ protein, 3+ copper and a gravity of 1.018 can be had and shows just that") {
  const auto wish =
      wished({"heat=2+", "ssa=2+", "benedict=3+", "sg=1.018", "colour=yellow", "clarity=clear", "ph=6"});
  const auto made = author::compose(test::shelf(), author::plain_case(test::shelf()), wish);
  if (!made) {
    FAIL(test::joined(made.error()));
  }
  check_shows(*made, wish);
  CHECK(made->liquid.colour == "yellow");
  CHECK(made->liquid.clarity == "clear");
  CHECK(made->warnings.empty());
  CHECK(made->tubes < 120);
}

TEST_CASE("wishes drawn at random show what was wished, or are refused in words") {
  // Each test with the words that a patient can have beside the others.
  const std::vector<std::pair<std::string, std::vector<std::string>>> words{
      {"heat", {"negative", "trace", "1+", "2+", "3+", "4+"}},
      {"benedict", {"negative", "trace", "1+", "2+", "3+", "4+"}},
      {"rothera", {"negative", "trace", "1+", "2+", "3+"}},
      {"fouchet", {"negative", "1+", "2+", "3+"}},
      {"guaiac", {"negative", "trace", "positive"}},
      {"hay", {"floats", "sinks slowly", "sinks at once"}},
  };
  int had = 0;
  int tubes = 0;
  constexpr int seeds = 24;
  for (int seed = 1; seed <= seeds; ++seed) {
    const practice::Draws draws(static_cast<std::uint64_t>(seed));
    std::vector<std::string> wishes;
    for (const auto& [key, can] : words) {
      if (draws.even("ask " + key) < 0.5) {
        wishes.push_back(key + "=" + can[draws.pick(key, can.size())]);
      }
    }
    wishes.push_back("sg=" + std::to_string(draws.between("sg", 1.012, 1.028)).substr(0, 5));
    wishes.push_back("ph=" + std::to_string(draws.between("ph", 5.2, 7.0)).substr(0, 3));
    const auto wish = wished(wishes);
    const auto made = author::compose(test::shelf(), author::plain_case(test::shelf()), wish);
    INFO("seed " << seed << ": " << test::joined(wishes));
    if (!made) {
      CHECK(!made.error().empty());
      continue;
    }
    ++had;
    tubes += made->tubes;
    check_shows(*made, wish);
  }
  CHECK(tubes < 60 * had);
  CHECK(had >= 20);
}

TEST_CASE("what cannot be had is said with its reason") {
  const auto refused = [](const std::vector<std::string>& words) {
    const auto made = author::compose(test::shelf(), author::plain_case(test::shelf()), wished(words));
    return made ? std::string("had") : test::joined(made.error());
  };
  // Much sugar is heavy, and what is left for the salts would be less than nothing.
  CHECK_THAT(refused({"benedict=4+", "sg=1.008"}), Catch::Contains("what the tests need weighs"));
  CHECK_THAT(refused({"sg=1.001"}), Catch::Contains("no kidney thins it below 50"));
  CHECK_THAT(refused({"sg=1.055"}), Catch::Contains("cannot be had"));
  CHECK_THAT(refused({"heat=negative", "ssa=3+"}), Catch::Contains("the same substance makes"));
  CHECK_THAT(refused({"fermentation=2+"}), Catch::Contains("cannot be had as 2+"));
}

TEST_CASE("another substance can make a test what its own is not to make") {
  const auto wish = wished({"strip_glucose=negative", "benedict=2+ by lactose"});
  const auto made = author::compose(test::shelf(), author::plain_case(test::shelf()), wish);
  if (!made) {
    FAIL(test::joined(made.error()));
  }
  check_shows(*made, wish);
}

TEST_CASE("wishes that cannot be read are refused in words") {
  const auto wrong = author::wish_from(
      {"heat", "heat=5+", "hat=2+", "sg=2", "colour=mauve", "ssa=1+ by gold"}, test::shelf());
  REQUIRE_FALSE(wrong);
  CHECK(wrong.error().size() == 6);
}

TEST_CASE("the same wish gives the same specimen, and composing can be given up") {
  const auto wish = wished({"rothera=2+"});
  const auto one = author::compose(test::shelf(), author::plain_case(test::shelf()), wish);
  const auto two = author::compose(test::shelf(), author::plain_case(test::shelf()), wish);
  REQUIRE(one);
  CHECK(one->specimen.mg_per_dl == two->specimen.mg_per_dl);
  int asked = 0;
  const auto none =
      author::compose(test::shelf(), author::plain_case(test::shelf()), wish, [&] { return ++asked > 3; });
  REQUIRE_FALSE(none);
  CHECK_THAT(none.error().front(), Catch::Contains("Given up"));
}

TEST_CASE("so much of a substance stays, and the rest is made to fit") {
  const auto wish = wished({"albumin=1.3 g/L", "cells.leucocytes=300 /uL", "benedict=2+", "sg=1.020"});
  REQUIRE(wish.amounts.size() == 2);
  CHECK(wish.amounts.front().amount == Approx(130)); // In mg/dL.
  const auto made = author::compose(test::shelf(), author::plain_case(test::shelf()), wish);
  if (!made) {
    FAIL(test::joined(made.error()));
  }
  const auto& catalogue = test::shelf().world->catalogue;
  const auto& limits = *test::shelf().limits;
  CHECK(author::amount_of(made->specimen, {"dissolved", "albumin"}, limits, catalogue) == Approx(130));
  CHECK(author::amount_of(made->specimen, {"cells", "leucocytes"}, limits, catalogue) == Approx(300));
  check_shows(*made, wish);

  // A test made of it shows what so much of it shows, and one that cannot is refused with the amount.
  const auto refused = author::compose(test::shelf(), author::plain_case(test::shelf()),
                                       wished({"albumin=20 mg/dL", "heat=3+"}));
  REQUIRE_FALSE(refused);
  CHECK_THAT(test::joined(refused.error()), Catch::Contains("with the albumin 20 mg/dL that is wished"));

  // What goes with the concentration is held as well, and urea is one of it.
  const auto held = author::compose(test::shelf(), author::plain_case(test::shelf()),
                                    wished({"urea=150 mmol/L", "sg=1.015"}));
  if (!held) {
    FAIL(test::joined(held.error()));
  }
  CHECK(author::amount_of(held->specimen, {"dissolved", "urea"}, limits, catalogue) == Approx(150));
  CHECK(held->liquid.gravity == Approx(1.015).margin(0.0005));
}

TEST_CASE("an amount that cannot be read is refused with what to write instead") {
  const auto wrong = author::wish_from(
      {"albumin=lots", "albumin=130 mmol/kg", "albumin=9000 mg/dL", "solids.albumin=3 mg/L"}, test::shelf());
  REQUIRE_FALSE(wrong);
  REQUIRE(wrong.error().size() == 4);
  CHECK_THAT(wrong.error().front(), Catch::Contains("from 0 to 2000 mg/dL"));
  CHECK_THAT(wrong.error().back(), Catch::Contains("no test that ends in a word"));
}
