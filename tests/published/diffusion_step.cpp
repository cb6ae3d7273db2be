// A step between two still liquids spreads by Fick's second law as c = c0/2 erfc(z / sqrt(4 D t)): J. Crank,
// The Mathematics of Diffusion, 2nd ed. 1975, from memory. The stream that made the border leaves a small
// spread of its own, so the growth of the spread is compared, and the shape at the end.
#include "tests/sim/column_support.hpp"

#include "sim/column/layers.hpp"
#include "sim/matter/density.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <vector>

using namespace column_support;

namespace {

struct Profile {
  std::vector<double> height_mm; // middles
  std::vector<double> upper_mm;  // upper ends
  std::vector<double> molar;
};

Profile profile(const column::Column& tube) {
  Profile p;
  const auto heights = column::extents(tube);
  for (std::size_t i = 0; i < tube.layers.size(); ++i) {
    p.height_mm.push_back(0.5 * (heights[i].from_mm + heights[i].to_mm));
    p.upper_mm.push_back(heights[i].to_mm);
    p.molar.push_back(tube.layers[i].molar(salt));
  }
  return p;
}

/// Middle and variance of the border, mm and mm2, from the step between each two layers. Fick's law on layers
/// of any thickness makes this variance grow by 2 D t exactly.
std::pair<double, double> border(const Profile& p) {
  double sum = 0;
  double first = 0;
  double second = 0;
  for (std::size_t i = 0; i + 1 < p.molar.size(); ++i) {
    const double fall = p.molar[i] - p.molar[i + 1];
    const double at_mm = p.upper_mm[i];
    sum += fall;
    first += fall * at_mm;
    second += fall * at_mm * at_mm;
  }
  const double middle = first / sum;
  return {middle, second / sum - middle * middle};
}

/// Salt 1 mol/L run under salt 0.1 mol/L.
column::Column layered(const matter::Catalogue& catalogue) {
  column::Column tube = tube_with(catalogue, liquid(catalogue, 3, 25, 0.1));
  column::pour_in(tube, liquid(catalogue, 3, 25, 1.0), true, catalogue);
  return tube;
}

void rest(column::Column& tube, const column::Chemistry& chemistry, double seconds, double step_s = 5) {
  column::Surroundings around;
  around.room_c = 25;
  around.shear_per_s = 0; // no convection, however slight
  for (double t = 0; t < seconds; t += step_s) {
    column::advance(tube, chemistry, around, step_s);
  }
}

constexpr double salt_mm2_per_s = 1.2e-3; // 1.2e-9 m2/s at 25 °C, as the model book says

} // namespace

TEST_CASE("a border between two still liquids widens as sqrt(4 D t), by the erfc solution") {
  const matter::Catalogue catalogue = small_catalogue();
  const column::Chemistry chemistry = small_chemistry(catalogue);
  column::Column tube = layered(catalogue);
  rest(tube, chemistry, 60);
  const double early_mm2 = border(profile(tube)).second;
  rest(tube, chemistry, 600);
  const Profile late = profile(tube);
  const auto [middle_mm, late_mm2] = border(late);
  CHECK(late_mm2 - early_mm2 == Approx(2 * salt_mm2_per_s * 600).epsilon(0.1)); // slices of 0.25 mm and more
  for (std::size_t i = 0; i < late.molar.size(); ++i) {
    const double erfc = std::erfc((late.height_mm[i] - middle_mm) / std::sqrt(2 * late_mm2));
    CAPTURE(late.height_mm[i] - middle_mm);
    CHECK(late.molar[i] == Approx(0.1 + 0.45 * erfc).margin(0.02)); // of a step of 0.9
  }
}

TEST_CASE("a border spreads alike in short and in long steps, faster when warm, and loses nothing") {
  const matter::Catalogue catalogue = small_catalogue();
  const column::Chemistry chemistry = small_chemistry(catalogue);
  column::Column usual = layered(catalogue);
  column::Column fine = usual;
  const double before = column::whole(usual, catalogue).mmol[salt];
  rest(usual, chemistry, 300, 30);
  rest(fine, chemistry, 300, 0.5);
  CHECK(border(profile(usual)).second ==
        Approx(border(profile(fine)).second)
            .epsilon(0.08)); // splitting of steps of 30 s; the bench takes 1.25 s
  CHECK(column::whole(usual, catalogue).mmol[salt] == Approx(before).epsilon(1e-12));
  // Stokes and Einstein: in proportion to temperature over viscosity.
  column::Column warm = layered(catalogue);
  column::Surroundings around;
  around.room_c = 40;
  around.shear_per_s = 0;
  for (auto& layer : warm.layers) {
    layer.temperature_c = 40;
  }
  const double start_mm2 = border(profile(warm)).second;
  column::advance(warm, chemistry, around, 300);
  const double gain =
      (313.15 / 298.15) * matter::water_viscosity_mpa_s(25) / matter::water_viscosity_mpa_s(40);
  CHECK(border(profile(warm)).second - start_mm2 == Approx(2 * salt_mm2_per_s * gain * 300).epsilon(0.12));
}
