#pragma once

#include <benchmark/benchmark.h>

#include <ctime>

namespace matula::bench_tests {

/// Processor time of the whole program, s: what others do on the machine hardly counts in it.
inline double processor_s() {
  timespec now{};
  clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &now);
  constexpr double s_per_ns = 1e-9;
  return static_cast<double>(now.tv_sec) + s_per_ns * static_cast<double>(now.tv_nsec);
}

/// Runs `ours` and `reference` in turn within the same loop, so that a busy machine slows both, and reports
/// how many times as long the reference takes, in processor time. The benchmark's own time is that of `ours`.
template <typename Ours, typename Reference>
void compare(benchmark::State& state, Ours ours, Reference reference) {
  double ours_s = 0;
  double reference_s = 0;
  for (auto unused : state) {
    (void)unused;
    const double begin_s = processor_s();
    ours();
    const double between_s = processor_s();
    reference();
    reference_s += processor_s() - between_s;
    ours_s += between_s - begin_s;
    state.SetIterationTime(between_s - begin_s);
  }
  state.counters["reference_over_ours"] = reference_s / ours_s;
}

} // namespace matula::bench_tests
