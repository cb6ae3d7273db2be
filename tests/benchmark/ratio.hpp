#pragma once

#include <benchmark/benchmark.h>

#include <chrono>

namespace matula::bench_tests {

/// Runs `ours` and `reference` in turn within the same loop, so that a busy machine slows both, and reports
/// how many times as long the reference takes. The benchmark's own time is that of `ours`.
template <typename Ours, typename Reference>
void compare(benchmark::State& state, Ours ours, Reference reference) {
  using Clock = std::chrono::steady_clock;
  using Seconds = std::chrono::duration<double>;
  double ours_s = 0;
  double reference_s = 0;
  for (auto unused : state) {
    (void)unused;
    const auto begin = Clock::now();
    ours();
    const auto between = Clock::now();
    reference();
    const auto end = Clock::now();
    ours_s += Seconds(between - begin).count();
    reference_s += Seconds(end - between).count();
    state.SetIterationTime(Seconds(between - begin).count());
  }
  state.counters["reference_over_ours"] = reference_s / ours_s;
}

} // namespace matula::bench_tests
