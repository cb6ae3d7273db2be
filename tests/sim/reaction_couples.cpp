// A turn and the turn that takes it back are solved as one, exactly, in a step of any length.
#include "tests/sim/chemistry_world.hpp"

#include "sim/reaction/index.hpp"
#include "sim/reaction/rate.hpp"
#include "sim/reaction/react.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace matula;
using namespace matula::tests;

namespace {

const reaction::Reaction& row(const std::string& key) {
  return chemistry_world().reaction(key);
}

reaction::Network couple() {
  return {{row("light_chain_opens"), row("light_chain_closes")}, {}, {}, {}};
}

constexpr double all_mmol = 1e-3; // 1 mL of 1 mmol/L

matter::Mixture closed_chains(double share, double temperature_c) {
  matter::Mixture mixture = solution(1, {{"light_chain", share}, {"light_chain_open", 1 - share}});
  mixture.temperature_c = temperature_c;
  return mixture;
}

double closed(const matter::Mixture& mixture) {
  return mixture.mmol[chemistry_world().id("light_chain")];
}

} // namespace

// Relaxation of A = B after a jump of temperature: M. Eigen, Disc. Faraday Soc. 17 (1954) 194; P. Atkins,
// Physical Chemistry, "relaxation methods": 1/tau = k + k'.
TEST_CASE("A couple comes to rest as the law of relaxation says, in one step or in many") {
  const ChemistryWorld& world = chemistry_world();
  const double temperature_c = GENERATE(58.0, 70.0, 85.0, 99.0);
  const double share = GENERATE(1.0, 0.5, 0.0);
  const double seconds = GENERATE(0.5, 30.0, 600.0);
  const double forth = reaction::constant_at(row("light_chain_opens"), temperature_c);
  const double back = reaction::constant_at(row("light_chain_closes"), temperature_c);
  const double rest = back / (forth + back) * all_mmol;
  const double expected = rest + (share * all_mmol - rest) * std::exp(-(forth + back) * seconds);
  CAPTURE(temperature_c, share, seconds, forth, back);

  matter::Mixture once = closed_chains(share, temperature_c);
  reaction::react(once, couple(), world.catalogue, seconds, 0);
  CHECK(closed(once) == Approx(expected).epsilon(1e-9).margin(1e-9 * all_mmol));

  matter::Mixture often = closed_chains(share, temperature_c);
  for (int i = 0; i < 20; ++i) {
    reaction::react(often, couple(), world.catalogue, seconds / 20, 0);
  }
  CHECK(closed(often) == Approx(expected).epsilon(1e-9).margin(1e-9 * all_mmol));
}

TEST_CASE("Nothing is gained or lost between the two of a couple") {
  matter::Mixture mixture = closed_chains(0.3, 80);
  reaction::react(mixture, couple(), chemistry_world().catalogue, 200, 0);
  const double open = mixture.mmol[chemistry_world().id("light_chain_open")];
  CHECK(closed(mixture) + open == Approx(all_mmol).epsilon(1e-12));
}

TEST_CASE("Only plain turns make a couple: a pH, an enzyme or light in one of them keeps them apart") {
  reaction::Network network = couple();
  const ChemistryWorld& world = chemistry_world();
  CHECK(reaction::make_index(network, world.catalogue).taken_back_by == std::vector<std::size_t>{1, 0});
  const std::vector<std::size_t> apart{reaction::none, reaction::none};
  SECTION("pH") {
    std::get<reaction::MassAction>(network.reactions[1].law).acid_pka = 4;
  }
  SECTION("enzyme") {
    std::get<reaction::MassAction>(network.reactions[0].law).saturation = {{world.id("glucose"), 0.01}};
  }
  SECTION("light") {
    network.reactions[0].light_share = 0.5;
  }
  SECTION("second order") {
    std::get<reaction::MassAction>(network.reactions[0].law).orders.front().second = 2;
  }
  SECTION("two from one") {
    network.reactions[0].changes.back().second = 2;
  }
  CHECK(reaction::make_index(network, world.catalogue).taken_back_by == apart);
}

TEST_CASE("What one portion leaves for the next moves nothing beyond the search's tolerance") {
  const ChemistryWorld& world = chemistry_world();
  reaction::Memory memory;
  for (const double bicarbonate : {5.0, 400.0, 0.5}) {
    matter::Mixture fresh = solution(1, {{"bicarbonate", bicarbonate},
                                         {"sodium", bicarbonate + 50},
                                         {"chloride", 50},
                                         {"phosphate", 20},
                                         {"glucose", 30},
                                         {"calcium", 4}});
    fresh.temperature_c = 90;
    matter::Mixture kept = fresh;
    reaction::react(fresh, world.network, world.catalogue, 20, 0);
    reaction::react(kept, world.network, world.catalogue, 20, 0, {}, memory);
    for (std::size_t i = 0; i < fresh.mmol.size(); ++i) {
      CAPTURE(world.catalogue.species[i].key, bicarbonate);
      CHECK(kept.mmol[i] == Approx(fresh.mmol[i]).epsilon(1e-4).margin(1e-9));
    }
  }
}
