// Light: our sphere against the textbook's, and the table of the lit tube against tracing it afresh.
#include "ratio.hpp"

#include "engine/assets/world.hpp"
#include "sim/appearance/cylinder_lookup.hpp"
#include "sim/optics/cylinder_light.hpp"
#include "sim/optics/mie.hpp"

#include <cmath>
#include <complex>
#include <stdexcept>
#include <vector>

namespace {

using namespace matula;

struct Efficiency {
  double extinction = 0;
  double scattering = 0;
};

/// The sphere as Bohren and Huffman 1983 program it in their appendix A, without the angles: downward for the
/// logarithmic derivative, upward for the Riccati-Bessel functions. Written here on its own as a reference.
Efficiency textbook_sphere(double x, std::complex<double> m) {
  const auto y = m * x;
  const int stop = static_cast<int>(x + 4 * std::cbrt(x) + 2);
  const int start = static_cast<int>(std::max<double>(stop, std::abs(y))) + 15;
  std::vector<std::complex<double>> derivative(start + 1);
  for (int n = start; n > 0; --n) {
    const auto over = static_cast<double>(n) / y;
    derivative[n - 1] = over - 1.0 / (derivative[n] + over);
  }
  double psi0 = std::cos(x);
  double psi1 = std::sin(x);
  double chi0 = -std::sin(x);
  double chi1 = std::cos(x);
  std::complex<double> xi1(psi1, -chi1);
  Efficiency sum;
  for (int n = 1; n <= stop; ++n) {
    const double psi = (2.0 * n - 1) * psi1 / x - psi0;
    const double chi = (2.0 * n - 1) * chi1 / x - chi0;
    const std::complex<double> xi(psi, -chi);
    const auto electric = derivative[n] / m + n / x;
    const auto magnetic = m * derivative[n] + n / x;
    const auto a = (electric * psi - psi1) / (electric * xi - xi1);
    const auto b = (magnetic * psi - psi1) / (magnetic * xi - xi1);
    sum.extinction += (2.0 * n + 1) * (a + b).real();
    sum.scattering += (2.0 * n + 1) * (std::norm(a) + std::norm(b));
    psi0 = psi1;
    psi1 = psi;
    chi0 = chi1;
    chi1 = chi;
    xi1 = std::complex<double>(psi1, -chi1);
  }
  sum.extinction *= 2 / (x * x);
  sum.scattering *= 2 / (x * x);
  return sum;
}

void sphere(benchmark::State& state) {
  const double x = static_cast<double>(state.range(0));
  const std::complex<double> m(1.33, 0.01);
  const double wanted = textbook_sphere(x, m).extinction;
  if (std::abs(optics::mie(x, m).extinction - wanted) > 1e-6 * wanted) {
    state.SkipWithError("our sphere and the textbook's differ");
    return;
  }
  bench_tests::compare(
      state, [&] { benchmark::DoNotOptimize(optics::mie(x, m)); },
      [&] { benchmark::DoNotOptimize(textbook_sphere(x, m)); });
}

/// A tube's light at the eight lateral places, once from the table and once traced with as many paths as the
/// table was made with, so that both are equally exact.
void lit_tube(benchmark::State& state) {
  auto world = assets::load(assets::folder());
  if (!world) {
    state.SkipWithError("the assets cannot be read");
    return;
  }
  const appearance::CylinderLookup table((*world)->optics.cylinder);
  constexpr std::size_t paths = 24000;
  const optics::LitCylinder tube;
  const std::vector<double> absorption{0.4};
  const auto white = optics::white_card();
  const auto black = optics::black_card();
  constexpr double scatter = 1.2;
  bench_tests::compare(
      state, [&] { benchmark::DoNotOptimize(table.at(scatter, absorption[0])); },
      [&] {
        for (std::size_t i = 0; i < appearance::lateral_samples; ++i) {
          const double offset = (static_cast<double>(i) + 0.5) / appearance::lateral_samples;
          benchmark::DoNotOptimize(
              optics::trace_cylinder(tube, offset, scatter, absorption, white, black, paths, 1));
        }
      });
}

} // namespace

BENCHMARK(sphere)->Arg(1)->Arg(10)->Arg(100)->Arg(1000)->UseManualTime();
BENCHMARK(lit_tube)->UseManualTime()->Iterations(5); // tracing takes seconds
BENCHMARK_MAIN();
