// Frames drawn offscreen: an idle bench, one with the flame lit, one with a tube boiling in it, and one with
// twelve tubes of cloud, copper and acid, one of them boiling.
#include "engine/assets/world.hpp"
#include "engine/render/bench_view.hpp"
#include "engine/render/gl.hpp"
#include "engine/render/offscreen.hpp"
#include "engine/scenario/scenario.hpp"
#include "engine/sitting/setup.hpp"
#include "sim/bench/bench.hpp"

#include <benchmark/benchmark.h>

namespace {

using namespace matula;

constexpr int width = 1280;
constexpr int height = 800;

enum Sight { Idle, Flame, Boiling, FullRack };

/// Eleven tubes beside the first: every other one with acid's cloud, the rest with copper.
void fill_rack(bench::State& state, const bench::Setup& setup) {
  for (int number = 2; number <= 12; ++number) {
    const auto tube = "tube-" + std::to_string(number);
    bench::perform(state, setup, bench::Pour{"specimen", tube, 2.5, false});
    bench::perform(state, setup, bench::Dispense{number % 2 == 0 ? "ssa_3" : "benedict", tube, 2.5, false});
    bench::perform(state, setup, bench::Mix{tube, bench::Manner::Invert, 3});
  }
}

bench::Scene scene_of(const assets::World& world, const scenario::Scenario& scenario, std::int64_t sight) {
  const auto setup = sitting::make_setup(world, scenario);
  bench::State state = bench::begin(setup);
  bench::perform(state, setup, bench::Pour{"specimen", "tube-1", 9, false});
  if (sight == FullRack) {
    fill_rack(state, setup);
  }
  if (sight >= Flame) {
    bench::perform(state, setup, bench::LightFlame{true});
  }
  if (sight >= Boiling) {
    bench::perform(state, setup, bench::Move{"tube-1", bench::Place::Flame, 0.85, false, true});
    bench::advance(state, setup, 90);
  }
  return bench::make_scene(state, setup, {appearance::Card::White, optics::Lamp::Daylight});
}

void frame(benchmark::State& state) {
  const auto folder = assets::folder();
  const auto world = assets::load(folder);
  if (!world) {
    state.SkipWithError("the assets cannot be read");
    return;
  }
  const auto scenario =
      scenario::load(folder.parent_path() / "scenarios" / "first_case.toml", (*world)->catalogue);
  const auto context = render::OffscreenContext::create();
  auto view = context ? render::BenchView::create(folder) : tl::unexpected(context.error());
  if (!scenario || !view) {
    state.SkipWithError("the worked example or OpenGL is missing");
    return;
  }
  const auto scene = scene_of(**world, *scenario, state.range(0));
  const auto target = render::Target::make(width, height, GL_RGBA8);
  target.bind();
  render::Show show;
  show.in_hand = "tube-1";
  const render::Rect area{0, 0, width, height};
  for (auto unused : state) {
    (void)unused;
    show.seconds += 1.0 / 60;
    show.boil_seconds = show.seconds;
    view->draw(scene, show, render::layout(scene, show, area), height);
    glFinish();
  }
}

} // namespace

BENCHMARK(frame)
    ->ArgName("0_idle_1_flame_2_boiling_3_full_rack")
    ->DenseRange(Idle, FullRack)
    ->Unit(benchmark::kMillisecond);
BENCHMARK_MAIN();
