// Laws of paper on the bench.
#include "sim/bench/bench.hpp"
#include "sim/bench/scene.hpp"
#include "tests/published/paper_support.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace matula;
using namespace matula::test;

namespace {

bench::Setup setup_of(const specimen::Specimen& urine) {
  const assets::World& world = paper_world();
  bench::Setup setup;
  setup.chemistry = &world.chemistry;
  setup.optics = &world.optics;
  setup.shapes = world.shapes;
  setup.urinometer = world.urinometer;
  setup.tools = world.tools;
  setup.papers = &world.papers;
  setup.cards = &world.cards;
  setup.specimen = urine;
  setup.reagents_out = {"acetic_acid_10"};
  return setup;
}

double grams(const bench::State& state) {
  const matter::Catalogue& catalogue = paper_world().catalogue;
  double sum =
      matter::solute_mass_g(column::whole(state.vessels.at("specimen").column, catalogue), catalogue);
  for (const auto& paper : state.papers) {
    for (const auto& pad : paper.piece.pads) {
      sum += matter::solute_mass_g(pad.inside, catalogue);
    }
  }
  return sum;
}

} // namespace

TEST_CASE("A dip takes liquid from the cup and loses nothing, however long") {
  const auto setup = setup_of(clean_urine());
  const matter::Catalogue& catalogue = paper_world().catalogue;
  for (const double seconds : {1.0, 30.0}) {
    bench::State state = bench::begin(setup);
    const double before_ml = state.vessels.at("specimen").column.volume_ml();
    double dry_g = 0;
    for (const auto& pad : paper_world().papers.back().pads) {
      dry_g += matter::solute_mass_g(paper::dry_pad(pad, catalogue, 22).inside, catalogue);
    }
    const double before_g = grams(state) + dry_g;
    REQUIRE(bench::perform(state, setup, bench::DipPaper{"strip", "specimen", seconds}).done);
    double held_ml = 0;
    for (const auto& pad : state.papers.front().piece.pads) {
      held_ml += pad.inside.volume_ml;
    }
    CHECK(state.vessels.at("specimen").column.volume_ml() + held_ml == Approx(before_ml).epsilon(1e-12));
    // Reactions take up a little oxygen and water; nothing else comes or goes.
    CHECK(grams(state) == Approx(before_g).epsilon(1e-6));
  }
}

TEST_CASE("A dip of a minute leaches the small molecules, a dip of a second does not") {
  // Small dyes diffuse through 0.35 mm of wet paper in about a minute: by the plane sheet of Crank 1975.
  CHECK(paper::leached_share(300, 0.35, 0) == 0);
  CHECK(paper::leached_share(300, 0.35, 1) < 0.02);
  CHECK(paper::leached_share(300, 0.35, 60) > 0.15);
  CHECK(paper::leached_share(160000, 0.35, 60) < 0.5 * paper::leached_share(300, 0.35, 60));
}

TEST_CASE("Any split of the same time gives the same paper") {
  const auto setup = setup_of(with("glucose", 300));
  bench::State once = bench::begin(setup);
  bench::perform(once, setup, bench::DipPaper{"strip", "specimen", 1});
  bench::State often = once;
  bench::advance(once, setup, 90);
  for (int i = 0; i < 900; ++i) {
    bench::advance(often, setup, 0.1);
  }
  CHECK(bench::state_hash(once) == bench::state_hash(often));
  CHECK(once.papers.front().piece.pads[2].inside.mmol == often.papers.front().piece.pads[2].inside.mmol);
}

TEST_CASE("Acid runs from pad to pad until the strip is blotted") {
  const auto setup = setup_of(clean_urine());
  const auto ph_pad = [&](bool blotted) {
    bench::State state = bench::begin(setup);
    bench::perform(state, setup, bench::DipPaper{"strip", "specimen", 1});
    if (blotted) {
      bench::perform(state, setup, bench::BlotPaper{"strip-1"});
    }
    bench::advance(state, setup, 60);
    return bench::make_scene(state, setup, {}).papers.front().pads[6];
  };
  REQUIRE(ph_pad(true).key == "ph");
  const auto to_lab = [](const optics::Xyz& colour) { return optics::to_lab(colour, optics::d65_white); };
  // Seen at a glance: more than 2 CIEDE2000, towards red.
  CHECK(optics::ciede2000(to_lab(ph_pad(true).colour), to_lab(ph_pad(false).colour)) > 2);
  CHECK(to_lab(ph_pad(false).colour).a > to_lab(ph_pad(true).colour).a);
}

TEST_CASE("A strip done by the book on the bench shows the card's colour") {
  const auto setup = setup_of(with("glucose", 500));
  bench::State state = bench::begin(setup);
  bench::perform(state, setup, bench::DipPaper{"strip", "specimen", 1});
  bench::perform(state, setup, bench::BlotPaper{"strip-1"});
  bench::advance(state, setup, 60);
  const bench::Scene scene = bench::make_scene(state, setup, {});
  REQUIRE(scene.papers.size() == 1);
  REQUIRE(scene.cards.size() == 3);
  const auto lab = [](const optics::Xyz& colour) { return optics::to_lab(colour, optics::d65_white); };
  CHECK(optics::ciede2000(lab(scene.papers[0].pads[2].colour), lab(scene.cards[2].rows[2].fields[3].second)) <
        1);
}

TEST_CASE("Papers are refused where they cannot be wetted, dripped on or found") {
  const auto setup = setup_of(clean_urine());
  bench::State state = bench::begin(setup);
  CHECK_FALSE(bench::perform(state, setup, bench::DipPaper{"strip", "tube-1", 1}).done);
  CHECK_FALSE(bench::perform(state, setup, bench::DipPaper{"litmus", "specimen", 1}).done);
  CHECK_FALSE(bench::perform(state, setup, bench::DipPaper{"strip", "specimen", 0}).done);
  CHECK_FALSE(bench::perform(state, setup, bench::BlotPaper{"strip-1"}).done);
  CHECK_FALSE(bench::perform(state, setup, bench::DropOn{"strip-1", "acetic_acid_10", 1}).done);
  REQUIRE(bench::perform(state, setup, bench::DipPaper{"ph", "specimen", 1}).done);
  CHECK_FALSE(bench::perform(state, setup, bench::DropOn{"ph-1", "benedict", 1}).done);
  CHECK(bench::perform(state, setup, bench::DropOn{"ph-1", "acetic_acid_10", 2}).done);
  CHECK(bench::perform(state, setup, bench::DiscardPaper{"ph-1"}).done);
  CHECK(state.papers.empty());
}

TEST_CASE(
    "Whole cells on a pad break, keep their mass's haemoglobin, and show as spots until there are many") {
  const assets::World& world = paper_world();
  const auto& strip_pads = world.papers.back().pads;
  paper::PadKind blood =
      *std::find_if(strip_pads.begin(), strip_pads.end(), [](const auto& pad) { return pad.key == "blood"; });
  const auto cells = world.catalogue.find_particle("cells").value();
  const auto haemoglobin = world.catalogue.find_species("haemoglobin").value();
  const auto dye = world.catalogue.find_species("tetramethylbenzidine_blue").value();
  blood.lyses = {{cells, 0.2, {{haemoglobin, 0.3}}}};
  blood.speckle = paper::Speckle{haemoglobin, dye, 0.02};
  const auto dipped = [&](double cells_per_ul) {
    auto liquid = specimen::make_liquid(clean_urine(), world.catalogue);
    const double grams =
        cells_per_ul * 1000 * liquid.volume_ml * world.catalogue.particles[cells].bin_mass_g(0);
    liquid.populations.of(cells).grams[0] = grams;
    return paper::dipped_pad(blood, liquid, world.chemistry, 22, 60);
  };
  const auto spots = [&](const paper::Pad& pad) {
    return paper::spots_on(pad, blood, world.catalogue, world.optics.scatter);
  };
  const paper::Pad few = dipped(20);
  // 20 cells a microlitre in the pad's 6.1 uL, nearly all broken within the minute.
  CHECK(few.broken_cells == Approx(20 * blood.void_ml() * 1000).epsilon(0.01));
  const double released_g =
      few.inside.mmol[haemoglobin] / 1000 * world.catalogue.species[haemoglobin].molar_mass_g_per_mol;
  CHECK(released_g ==
        Approx(0.3 * few.broken_cells * world.catalogue.particles[cells].bin_mass_g(0)).epsilon(0.01));
  CHECK(spots(few).count > 100);
  CHECK(spots(few).cover < 0.2);
  const auto spot = lab_of(spots(few).spot);
  const auto ground = lab_of(spots(few).ground);
  CHECK(optics::ciede2000(spot, ground) > 5); // Plain to see.
  CHECK(optics::ciede2000(
            ground, lab_of(spots(dipped(0)).count == 0
                               ? paper::reflectance(dipped(0), blood, world.catalogue, world.optics.scatter)
                               : spots(few).ground)) < 1);
  CHECK(spots(dipped(5000)).count == 0); // Run together.
}
