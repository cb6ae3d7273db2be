#include "tests/sim/any_bench.hpp"

#include <algorithm>
#include <array>

namespace matula::tests {

namespace {

constexpr std::size_t least_steps = 8;
constexpr std::size_t more_steps = 10;
constexpr int tubes = 3;

bench::Setup any_setup(std::uint64_t seed, Dice& dice) {
  const assets::World& world = any_world();
  bench::Setup setup;
  setup.chemistry = &world.chemistry;
  setup.optics = &world.optics;
  setup.shapes = world.shapes;
  setup.urinometer = world.urinometer;
  setup.tools = world.tools;
  setup.specimen = any_specimen(dice);
  for (const matter::Reagent& reagent : world.catalogue.reagents) {
    setup.reagents_out.push_back(reagent.key);
  }
  setup.room_c = dice.between(12, 35);
  setup.tube_count = tubes;
  setup.seed = seed;
  return setup;
}

bench::VesselName any_vessel(Dice& dice) {
  static const std::array<const char*, 5> names{"tube-1", "tube-2", "tube-3", "jar", "specimen"};
  return names[std::min<std::size_t>(dice.below(9), 8) % names.size()];
}

bench::Action any_movement(Dice& dice) {
  static const std::array<bench::Place, 4> places{bench::Place::Rack, bench::Place::Hand, bench::Place::Flame,
                                                  bench::Place::Bath};
  return bench::Move{any_vessel(dice), places[dice.below(places.size())], dice.between(0, 1), dice.yes(0.2),
                     dice.yes(0.7)};
}

bench::Action any_action(Dice& dice) {
  const std::size_t kind = dice.below(20);
  if (kind < 7) {
    const auto& bottles = any_world().catalogue.reagents;
    return bench::Dispense{bottles[dice.below(bottles.size())].key, any_vessel(dice),
                           dice.log_between(0.05, 5), dice.yes(0.3)};
  }
  if (kind < 11) {
    return bench::Pour{dice.yes(0.7) ? "specimen" : any_vessel(dice), any_vessel(dice),
                       dice.log_between(0.1, 20), dice.yes(0.3)};
  }
  switch (kind) {
  case 11:
  case 12:
    return bench::Mix{any_vessel(dice), dice.yes(0.5) ? bench::Manner::Invert : bench::Manner::Swirl,
                      dice.between(1, 8)};
  case 13:
  case 14:
    return any_movement(dice);
  case 15:
    return bench::LightFlame{dice.yes(0.8)};
  case 16:
    return bench::SetBath{dice.between(0, 100)};
  case 17:
    return bench::Float{any_vessel(dice), dice.yes(0.5), dice.yes(0.5)};
  case 18:
    return bench::LiftFloat{};
  default:
    return bench::Wait{dice.log_between(1, 60)};
  }
}

std::string broken_state(const bench::State& state) {
  for (const auto& [name, vessel] : state.vessels) {
    std::string wrong = broken_law(vessel.column.sediment);
    for (const matter::Mixture& layer : vessel.column.layers) {
      wrong = wrong.empty() ? broken_law(layer) : wrong;
    }
    wrong = wrong.empty() && vessel.column.volume_ml() > 0 ? broken_looks(vessel.column) : wrong;
    if (!wrong.empty()) {
      return name + ": " + wrong;
    }
  }
  return "";
}

void note_pairs(const bench::Vessel& vessel, std::set<Pair>& met) {
  Contents contents;
  const auto& bottles = any_world().catalogue.reagents;
  for (const bench::VesselTrace::Addition& addition : vessel.trace.additions) {
    for (std::size_t i = 0; i < bottles.size(); ++i) {
      if (bottles[i].key == addition.what) {
        meet(contents, i, met);
      }
    }
  }
}

} // namespace

Played play_bench(std::uint64_t seed) {
  Dice dice(seed);
  const bench::Setup setup = any_setup(seed, dice);
  bench::State state = bench::begin(setup);
  Played played;
  const std::size_t count = least_steps + dice.below(more_steps);
  for (std::size_t i = 0; i < count && played.broken.empty(); ++i) {
    const bench::Action action = any_action(dice);
    const bench::Outcome outcome = bench::perform(state, setup, action);
    played.steps.push_back("action " + std::to_string(action.index()) +
                           (outcome.done ? " done" : " refused: " + outcome.refused_because));
    if (!outcome.done && outcome.refused_because.empty()) {
      played.broken = "refused without a reason";
    }
    bench::advance(state, setup, 2);
    played.broken = played.broken.empty() ? broken_state(state) : played.broken;
  }
  for (const auto& [name, vessel] : state.vessels) {
    note_pairs(vessel, played.met);
  }
  return played;
}

} // namespace matula::tests
