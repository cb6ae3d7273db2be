// Colour tests done by the book, and by hand, on a plain urine with doses.
#pragma once

#include "engine/assets/world.hpp"
#include "engine/scoring/ladder.hpp"
#include "engine/scoring/moments.hpp"
#include "engine/scoring/standards.hpp"
#include "sim/reading/colour_strength.hpp"
#include "sim/reading/observables.hpp"

#include <catch2/catch.hpp>

#include <memory>
#include <string>
#include <utility>
#include <vector>

namespace matula::tests {

using Doses = std::vector<std::pair<std::string, double>>; ///< mg/dL by species.

inline const assets::World& colour_world() {
  static const std::unique_ptr<const assets::World> loaded = [] {
    auto result = assets::load(assets::folder());
    INFO((result ? "" : scenario::to_text(result.error())));
    REQUIRE(result);
    return std::move(*result);
  }();
  return *loaded;
}

inline const scoring::Standards& standards() {
  static const auto loaded = scoring::load_standards(assets::folder());
  INFO((loaded ? "" : scenario::to_text(loaded.error())));
  REQUIRE(loaded);
  return *loaded;
}

inline const specimen::Specimen& plain_urine() {
  static const specimen::Specimen plain = *scoring::load_plain_urine(assets::folder());
  return plain;
}

/// What is seen of a tube: the reader's word, the strength it goes by, and the colour.
struct ColourSeen {
  std::string word;
  double strength = 0;
  optics::Lab lab;
};

/// A tube and the bench it stands on.
struct Worked {
  bench::Setup setup;
  bench::State state;
  bench::VesselName vessel;

  void act(const bench::Action& action) {
    const auto outcome = bench::perform(state, setup, action);
    INFO(outcome.refused_because);
    REQUIRE(outcome.done);
  }

  [[nodiscard]] ColourSeen read(const std::string& test) const {
    const auto& rule = *standards().rules.find_test(test);
    const auto grade =
        scoring::read_vessel(state, setup, colour_world().thresholds, rule.scale, vessel).grade;
    const auto seen = scoring::observe(state, setup, vessel, rule.scale);
    return {rule.word(grade), seen.colour_strength, seen.colour_on_white};
  }

  [[nodiscard]] double held_mmol(const column::Column& column, const std::string& species) const {
    return column::whole(column, *setup.chemistry->catalogue)
        .mmol[setup.chemistry->catalogue->find_species(species).value()];
  }
};

/// A bench with a plain urine that also holds `doses`.
inline bench::Setup bench_with(const Doses& doses, const scoring::Recipe& recipe) {
  specimen::Specimen urine = plain_urine();
  for (const auto& [species, mg_per_dl] : doses) {
    urine.mg_per_dl.emplace_back(species, mg_per_dl);
  }
  return scoring::ladder_setup(colour_world(), urine, recipe, 0);
}

/// The test by the book.
inline Worked by_the_book(const std::string& test, const Doses& doses) {
  const auto& recipe = standards().recipes.at(test);
  Worked worked{bench_with(doses, recipe), {}, {}};
  worked.setup.tube_count = 2;
  auto tube = scoring::ladder_tube(worked.setup, recipe);
  INFO(tube.stopped_because);
  REQUIRE(tube.stopped_because.empty());
  worked.state = std::move(tube.state);
  worked.vessel = tube.vessel;
  return worked;
}

inline ColourSeen seen_by_the_book(const std::string& test, const Doses& doses) {
  return by_the_book(test, doses).read(test);
}

/// A bench with one empty tube, to work by hand.
inline Worked by_hand(const Doses& doses) {
  Worked worked{bench_with(doses, standards().recipes.begin()->second), {}, "tube-1"};
  worked.setup.tube_count = 2;
  worked.state = bench::begin(worked.setup);
  worked.act(bench::Protect{true, true});
  return worked;
}

/// Milligrams a decilitre of `mmol_per_l`.
inline double mg_per_dl(const std::string& species, double mmol_per_l) {
  const auto& catalogue = colour_world().catalogue;
  return mmol_per_l * catalogue.species[catalogue.find_species(species).value()].molar_mass_g_per_mol / 10;
}

} // namespace matula::tests
