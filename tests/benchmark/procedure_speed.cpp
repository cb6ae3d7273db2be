// Every test of the data folder done by the book on plain urine with the middle dose of its ladder: processor
// time of it, what that is of the time that passes at the bench, and how it stands to a fixed piece of
// arithmetic done in the same run, so that a busy or a slow machine slows both.
#include "ratio.hpp"

#include "engine/assets/world.hpp"
#include "engine/scoring/ladder.hpp"
#include "engine/scoring/standards.hpp"

#include <cmath>
#include <stdexcept>
#include <string>

namespace {

using namespace matula;

template <typename T> T need(tl::expected<T, scenario::Problems> read) {
  if (!read) {
    throw std::runtime_error(scenario::to_text(read.error()));
  }
  return std::move(*read);
}

struct Room {
  std::unique_ptr<const assets::World> world;
  scoring::Standards standards;
  specimen::Specimen plain;
};

const Room& room() {
  static const Room one = [] {
    const auto folder = assets::folder();
    return Room{need(assets::load(folder)), need(scoring::load_standards(folder)),
                need(scoring::load_plain_urine(folder))};
  }();
  return one;
}

/// A million exponentials, each waiting for the one before: some 20 ms, and the same on every day.
void fixed_arithmetic() {
  double x = 0.5;
  for (int i = 0; i < 1'000'000; ++i) {
    x = std::exp(-x);
  }
  benchmark::DoNotOptimize(x);
}

void by_the_book(benchmark::State& state, const procedure::Recipe& recipe) {
  const auto& ladder = recipe.ladder_mg_per_dl;
  const double dose = ladder.empty() ? 0.0 : ladder[ladder.size() / 2];
  auto setup = scoring::ladder_setup(*room().world, room().plain, recipe, dose);
  setup.tube_count = 12; // some tests compare two
  double bench_s = 0;
  double computed_s = 0;
  bench_tests::compare(
      state,
      [&] {
        const double before_s = bench_tests::processor_s();
        const auto tube = scoring::do_by_the_book(setup, recipe);
        computed_s += bench_tests::processor_s() - before_s;
        bench_s += tube.state.time_s;
        if (!tube.stopped_because.empty()) {
          state.SkipWithError(tube.stopped_because.c_str());
        }
      },
      fixed_arithmetic);
  state.counters["bench_s"] = bench_s / static_cast<double>(state.iterations());
  state.counters["per_mille_of_it"] = bench_s > 0 ? 1000 * computed_s / bench_s : 0.0;
}

} // namespace

int main(int argc, char** argv) {
  benchmark::Initialize(&argc, argv);
  for (const auto& [test, recipe] : room().standards.recipes) {
    benchmark::RegisterBenchmark(test.c_str(),
                                 [&recipe](benchmark::State& state) { by_the_book(state, recipe); })
        ->UseManualTime()
        ->Unit(benchmark::kMillisecond);
  }
  benchmark::RunSpecifiedBenchmarks();
  return 0;
}
