// Computes the table of light through a lit tube that the program looks up. About 80 s of one core; the
// same bits on every run. From the top folder, after a build:
//   build/dev/tests/benchmark/make_cylinder_table > assets/optics/cylinder.csv
#include "sim/optics/cylinder_light.hpp"

#include <cstdio>
#include <vector>

namespace {

constexpr std::size_t lateral_samples = 8;
constexpr std::size_t paths = 24000;
constexpr std::uint64_t seed = 20240601;

const std::vector<double> reduced_scatter{0,   0.002, 0.005, 0.01, 0.02, 0.05, 0.1, 0.2, 0.35,
                                          0.5, 0.75,  1,     1.4,  2,    2.8,  4,   5.6, 8,
                                          11,  16,    22,    32,   45,   64,   90,  128};
const std::vector<double> absorption{0,   0.01, 0.02, 0.05, 0.1, 0.2, 0.35, 0.5, 0.75, 1,
                                     1.4, 2,    2.8,  4,    5.6, 8,   11,   16,  22,   32};

} // namespace

int main() {
  using namespace matula::optics;
  const LitCylinder tube;
  std::printf("# Light through a lit tube; made by tests/benchmark/make_cylinder_table.cpp with %zu paths a "
              "value, seed %llu.\n"
              "# Inside diameter 14 mm, wall 1 mm, indices 1.333 and 1.5, Henyey-Greenstein g 0.8.\n"
              "reduced_scatter,absorption,lateral,on_white,on_black\n",
              paths, static_cast<unsigned long long>(seed));
  for (const double scatter : reduced_scatter) {
    std::vector<CylinderLight> light;
    for (std::size_t i = 0; i < lateral_samples; ++i) {
      const double offset = (static_cast<double>(i) + 0.5) / lateral_samples;
      light.push_back(
          trace_cylinder(tube, offset, scatter, absorption, white_card(), black_card(), paths, seed));
    }
    for (std::size_t k = 0; k < absorption.size(); ++k) {
      for (std::size_t i = 0; i < lateral_samples; ++i) {
        std::printf("%g,%g,%zu,%.5g,%.5g\n", scatter, absorption[k], i, light[i].on_white[k],
                    light[i].on_black[k]);
      }
    }
    std::fflush(stdout);
  }
  return 0;
}
