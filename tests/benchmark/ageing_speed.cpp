// A day of a specimen's life: our solver against SUNDIALS CVODE on the same equations, and the whole cup with
// its clouds and its settling.
#include "../published/ageing_cvode.hpp"
#include "ratio.hpp"

#include "engine/assets/world.hpp"
#include "engine/scenario/scenario.hpp"
#include "engine/sitting/setup.hpp"
#include "sim/ageing/live.hpp"

#include <stdexcept>

namespace {

using namespace matula;

const assets::World& world() {
  static const auto loaded = assets::load(assets::folder());
  if (!loaded) {
    throw std::runtime_error(loaded.error().front().file + ": " + loaded.error().front().found);
  }
  return **loaded;
}

/// Infected, bloody, sugary and jaundiced: nearly every law is at work.
specimen::Specimen crowded() {
  specimen::Specimen s;
  s.volume_ml = 100;
  s.mmol_per_l = {{"sodium", 120},      {"potassium", 55}, {"ammonium", 30}, {"urea", 280},
                  {"creatinine", 9},    {"phosphate", 20}, {"sulphate", 16}, {"calcium", 3.3},
                  {"magnesium", 3},     {"citrate", 2},    {"urate", 2.5},   {"other_organics", 25},
                  {"glucose", 20},      {"nitrate", 1},    {"acetone", 3},   {"acetoacetate", 8},
                  {"homogentisate", 2}, {"bicarbonate", 4}};
  s.mg_per_dl = {{"albumin", 60}, {"bilirubin", 3}, {"urobilinogen", 3}};
  s.cells_per_ul = {{"erythrocytes", 800}, {"leucocytes", 900}, {"hyaline_casts", 1}};
  s.resting_per_ml = {{"escherichia", 1e4}};
  s.growing_per_ml = {{"proteus", 1e5}};
  return s;
}

void a_day_of_life(benchmark::State& state) {
  const auto& w = world();
  matter::Mixture fresh = specimen::make_liquid(crowded(), w.catalogue);
  fresh.temperature_c = static_cast<double>(state.range(0));
  constexpr double day_h = 24;
  bench_tests::compare(
      state,
      [&] {
        matter::Mixture old = fresh;
        ageing::Gas gas;
        ageing::live(old, w.catalogue, w.chemistry, w.ageing, {}, day_h, gas);
        benchmark::DoNotOptimize(old);
      },
      [&] {
        ageing::Gas gas;
        ageing::System system(fresh, w.catalogue, w.chemistry, w.ageing, {}, gas);
        benchmark::DoNotOptimize(test::by_cvode(system, day_h, 1e-5, 1e-8));
      });
}

void a_day_in_the_cup(benchmark::State& state) {
  scenario::Scenario scenario;
  scenario.key = "cup";
  scenario.specimen = crowded();
  scenario.specimen.life = {{24, static_cast<double>(state.range(0)), false, 300}};
  const bench::Setup setup = sitting::make_setup(world(), scenario);
  for (auto unused : state) {
    (void)unused;
    benchmark::DoNotOptimize(bench::begin(setup));
  }
}

BENCHMARK(a_day_of_life)->Arg(4)->Arg(22)->Arg(37)->UseManualTime()->Unit(benchmark::kMillisecond);
BENCHMARK(a_day_in_the_cup)->Arg(4)->Arg(22)->Arg(37)->Unit(benchmark::kMillisecond);

} // namespace

BENCHMARK_MAIN();
