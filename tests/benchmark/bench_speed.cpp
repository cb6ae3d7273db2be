// The bench: six tubes for ten minutes, the worked example played and marked, and what stands behind them.
#include "engine/assets/world.hpp"
#include "engine/scenario/scenario.hpp"
#include "engine/scoring/standards.hpp"
#include "engine/sitting/setup.hpp"
#include "engine/sitting/steps.hpp"
#include "sim/bench/bench.hpp"

#include <benchmark/benchmark.h>

#include <filesystem>
#include <stdexcept>
#include <string>

namespace {

using namespace matula;

struct Room {
  std::unique_ptr<const assets::World> world;
  scoring::Standards standards;
  scenario::Scenario scenario;
  std::vector<sitting::Event> steps;
};

template <typename T> T need(tl::expected<T, scenario::Problems> read) {
  if (!read) {
    throw std::runtime_error(scenario::to_text(read.error()));
  }
  return std::move(*read);
}

const Room& room() {
  static const Room one = [] {
    const auto assets = assets::folder();
    const auto cases = assets.parent_path() / "scenarios";
    Room all;
    all.world = need(assets::load(assets));
    all.standards = need(scoring::load_standards(assets));
    all.scenario = need(scenario::load(cases / "first_case.toml", all.world->catalogue));
    all.steps = need(sitting::read_steps(cases / "first_case.steps.jsonl"));
    return all;
  }();
  return one;
}

void do_it(bench::State& state, const bench::Setup& setup, const bench::Action& action) {
  const auto outcome = bench::perform(state, setup, action);
  if (!outcome.done) {
    throw std::runtime_error(outcome.refused_because);
  }
}

/// Two tubes each of: specimen alone, with sulfosalicylic acid, with Benedict's reagent. Then ten minutes.
void six_tubes_ten_minutes(benchmark::State& state) {
  const auto setup = sitting::make_setup(*room().world, room().scenario);
  bench::State begun = bench::begin(setup);
  for (const char* tube : {"tube-1", "tube-2", "tube-3", "tube-4", "tube-5", "tube-6"}) {
    do_it(begun, setup, bench::Pour{"specimen", tube, 3, false});
  }
  for (const char* tube : {"tube-3", "tube-4"}) {
    do_it(begun, setup, bench::Dispense{"ssa_3", tube, 3, false});
  }
  for (const char* tube : {"tube-5", "tube-6"}) {
    do_it(begun, setup, bench::Dispense{"benedict", tube, 5, false});
  }
  for (auto unused : state) {
    (void)unused;
    bench::State now = begun;
    bench::advance(now, setup, 600);
    benchmark::DoNotOptimize(bench::state_hash(now));
  }
}

/// All of `matula play` but printing: assets, case and steps read, the sitting played and marked.
void play_worked_example(benchmark::State& state) {
  const auto assets_folder = assets::folder();
  for (auto unused : state) {
    (void)unused;
    const auto world = need(assets::load(assets_folder));
    const auto standards = need(scoring::load_standards(assets_folder));
    benchmark::DoNotOptimize(scoring::score(*world, standards, room().scenario, room().steps));
  }
}

void read_assets(benchmark::State& state) {
  for (auto unused : state) {
    (void)unused;
    benchmark::DoNotOptimize(need(assets::load(assets::folder())));
  }
}

} // namespace

BENCHMARK(six_tubes_ten_minutes)->Unit(benchmark::kMillisecond);
BENCHMARK(play_worked_example)->Unit(benchmark::kMillisecond);
BENCHMARK(read_assets)->Unit(benchmark::kMillisecond);
BENCHMARK_MAIN();
