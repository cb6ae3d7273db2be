#include "tests/sim/bench_fixture.hpp"

#include "sim/bench/measure.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace matula;
using namespace matula::bench;

namespace {

Setup urine_with(const std::string& species, double mg_per_dl, std::vector<std::string> reagents,
                 double room_c = 22) {
  Setup s = test::setup();
  s.specimen.mg_per_dl = {{species, mg_per_dl}};
  s.specimen.temperature_c = room_c;
  s.room_c = room_c;
  s.reagents_out = std::move(reagents);
  s.tube_count = 2;
  return s;
}

/// Height of the Esbach bed on the tube's own scale, g/L, straight between its lines.
double on_scale(const column::VesselShape& shape, double mm) {
  double below_mm = 0;
  double below_g_l = 0;
  for (const column::GlassMark& mark : shape.marks) {
    if (mark.label == "U") {
      break;
    }
    const double g_l = std::stod(mark.label);
    if (mm <= mark.height_mm) {
      return below_g_l + (g_l - below_g_l) * (mm - below_mm) / (mark.height_mm - below_mm);
    }
    below_mm = mark.height_mm;
    below_g_l = g_l;
  }
  return below_g_l;
}

double esbach_g_l(double g_l, double room_c) {
  const Setup setup = urine_with("albumin", 100 * g_l, {"esbach"}, room_c);
  State state = begin(setup);
  REQUIRE(perform(state, setup, Pour{"specimen", "esbach", 10}).done);
  REQUIRE(perform(state, setup, Dispense{"esbach", "esbach", 10}).done);
  perform(state, setup, Mix{"esbach", Manner::Invert, 12});
  perform(state, setup, Wait{24 * 3600.0});
  perform(state, setup, Look{"esbach", {}, 0});
  const column::Column& column = state.vessels.at("esbach").column;
  return on_scale(column.shape, column.shape.level_mm(column.sediment.volume_ml));
}

struct Warmed {
  double clouds_c = 0;    ///< Tube temperature at which print first loses a tenth of its contrast.
  double clears_c = 0;    ///< At which, beyond the thickest cloud, nine tenths of the contrast are back.
  double returns_c = 0;   ///< At which cloud is seen again on cooling.
  double thickest = 1;    ///< Least print contrast on the way up.
  double at_the_boil = 1; ///< Print contrast at the end of the way up.
};

double print_contrast(State state, const Setup& setup) {
  perform(state, setup, Mix{"tube-1", Manner::Swirl, 3});
  perform(state, setup, Look{"tube-1", {}, 0});
  const auto looks = look(state, setup, "tube-1", {appearance::Card::Printed, optics::Lamp::Daylight});
  double sum = 0;
  for (const appearance::Row& row : looks.rows) {
    sum += row.print_contrast / static_cast<double>(looks.rows.size());
  }
  return sum;
}

double thermometer_c(State& state, const Setup& setup) {
  return perform(state, setup, Thermometer{"tube-1"}).thermometer_c.value();
}

/// 4 mL of urine and 1 mL of buffer, warmed by 1 °C a minute in the bath, then cooled in the rack.
Warmed warm_and_cool(const std::string& protein, double mg_per_dl) {
  const Setup setup = urine_with(protein, mg_per_dl, {"acetate_buffer_4_9"});
  State state = begin(setup);
  perform(state, setup, Pour{"specimen", "tube-1", 4});
  perform(state, setup, Dispense{"acetate_buffer_4_9", "tube-1", 1});
  perform(state, setup, Mix{"tube-1", Manner::Invert, 5});
  perform(state, setup, Move{"tube-1", Place::Bath});
  perform(state, setup, SetBath{100, 1});
  Warmed seen;
  for (int minute = 0; minute < 80; minute += 4) {
    perform(state, setup, Wait{240});
    const double contrast = print_contrast(state, setup);
    const double tube_c = thermometer_c(state, setup);
    seen.clouds_c = seen.clouds_c == 0 && contrast < 0.9 ? tube_c : seen.clouds_c;
    seen.clears_c = contrast < 0.9 ? 0 : seen.clears_c == 0 && seen.clouds_c > 0 ? tube_c : seen.clears_c;
    seen.thickest = std::min(seen.thickest, contrast);
    seen.at_the_boil = contrast;
  }
  perform(state, setup, Move{"tube-1", Place::Rack});
  for (int step = 0; step < 24 && seen.returns_c == 0; ++step) {
    perform(state, setup, Wait{60});
    seen.returns_c = print_contrast(state, setup) < 0.9 ? thermometer_c(state, setup) : 0;
  }
  return seen;
}

/// Absorbance at 620 nm of a standard (or of saline) against nothing, after so many minutes, turned over.
double turbidity(const std::string& liquid, const std::string& acid, double liquid_ml, double acid_ml,
                 double minutes) {
  Setup setup = test::setup();
  setup.reagents_out = {liquid, acid};
  setup.tube_count = 1;
  State state = begin(setup);
  perform(state, setup, Dispense{liquid, "tube-1", liquid_ml});
  perform(state, setup, Dispense{acid, "tube-1", acid_ml});
  perform(state, setup, Mix{"tube-1", Manner::Invert, 5});
  perform(state, setup, Wait{60 * minutes});
  perform(state, setup, Mix{"tube-1", Manner::Invert, 2});
  return beam_extinction(setup, state.vessels.at("tube-1").column, 620);
}

/// Standard curve 25, 50, 100, 150 mg/dL, less the blank.
std::vector<std::pair<double, double>> curve(const std::string& acid, double liquid_ml, double acid_ml,
                                             double minutes) {
  const double blank = turbidity("saline", acid, liquid_ml, acid_ml, minutes);
  std::vector<std::pair<double, double>> points;
  for (const int mg_per_dl : {25, 50, 100, 150}) {
    const std::string standard = "albumin_standard_" + std::to_string(mg_per_dl);
    points.emplace_back(mg_per_dl, turbidity(standard, acid, liquid_ml, acid_ml, minutes) - blank);
  }
  return points;
}

/// Largest distance of a point from the best straight line, as a share of the highest point.
double bend(const std::vector<std::pair<double, double>>& points) {
  double n = 0;
  double sx = 0;
  double sy = 0;
  double sxx = 0;
  double sxy = 0;
  for (const auto& [x, y] : points) {
    n += 1;
    sx += x;
    sy += y;
    sxx += x * x;
    sxy += x * y;
  }
  const double slope = (n * sxy - sx * sy) / (n * sxx - sx * sx);
  const double start = (sy - slope * sx) / n;
  double worst = 0;
  for (const auto& [x, y] : points) {
    worst = std::max(worst, std::abs(y - start - slope * x));
  }
  return worst / points.back().second;
}

} // namespace

TEST_CASE("Esbach: the scale reads grams a litre at 15 to 22 C, and more in a warm room") {
  // Reading in g/L, 1 to 7; error of the test 20 to 30 %; a warm laboratory packs looser (H. Varley 1967,
  // from memory). The scale was laid out in this model at 18.5 °C, so that the middle row checks straightness
  // only.
  for (const double g_l : {1.0, 6.0}) {
    CAPTURE(g_l);
    CHECK(esbach_g_l(g_l, 18.5) == Approx(g_l).epsilon(0.05));
  }
  CHECK(esbach_g_l(4, 15) == Approx(4).epsilon(0.10));
  CHECK(esbach_g_l(4, 22) == Approx(4).epsilon(0.10));
  const double warm = esbach_g_l(4, 30);
  CHECK(warm > 4 * 1.1);
  CHECK(warm < 4 * 1.35);
}

TEST_CASE("Light chains cloud at 40 to 60 C, clear towards the boil and return on cooling") {
  // Basic Concepts in Clinical Biochemistry, p. 35: out from 40 to 60 °C, back in solution in part or wholly
  // at 80 to 100, again out at 60 to 40 on cooling. Ten degrees are left for the way the tube cools in the
  // rack.
  const Warmed seen = warm_and_cool("light_chain", 200);
  CAPTURE(seen.thickest, seen.at_the_boil);
  CHECK(seen.clouds_c >= 40);
  CHECK(seen.clouds_c <= 60);
  CHECK(seen.thickest < 0.3);
  CHECK(seen.at_the_boil > 0.9);
  CHECK(seen.clears_c >= 75);
  CHECK(seen.clears_c <= 100);
  CHECK(seen.returns_c >= 40);
  CHECK(seen.returns_c <= 70);
}

TEST_CASE("Albumin clouds later and does not clear at the boil") {
  // The trap of the test: common practice.
  const Warmed seen = warm_and_cool("albumin", 200);
  CAPTURE(seen.clouds_c, seen.thickest);
  CHECK(seen.clouds_c > 55);
  CHECK(seen.at_the_boil < 0.6);
}

TEST_CASE("Trichloroacetic acid gives a straight line to 150 mg/dL after 10 min") {
  // WHO 2003, p. 238: 1.6 mL and 0.4 mL, here doubled so that the beam is covered; 100 to 1000 mg/L.
  const auto points = curve("tca_12_5", 3.2, 0.8, 10);
  CAPTURE(points[0].second, points[1].second, points[2].second, points[3].second);
  CHECK(points[3].second > 0.3);
  CHECK(points[3].second < 2.0);
  CHECK(bend(points) < 0.02);
  // The same absorbance for each mg at either end, within a tenth or so: some of the protein stays dissolved.
  CHECK(points[3].second / 150 == Approx(points[0].second / 25).epsilon(0.12));
}

TEST_CASE("Sulfosalicylic acid 1 + 4: a curve that rises with every standard, bent by no more than a tenth") {
  // Henry, from memory: 1 mL and 4 mL of 3 %, 5 to 10 min, 540 to 700 nm, straight to 150 mg/dL. The grains
  // of this model are fitted to what the eye sees at 1 + 1 and bend the line at the low end.
  for (const double minutes : {5.0, 10.0}) {
    const auto points = curve("ssa_3", 1, 4, minutes);
    CAPTURE(minutes, points[0].second, points[1].second, points[2].second, points[3].second);
    for (std::size_t i = 1; i < points.size(); ++i) {
      CHECK(points[i].second > points[i - 1].second + 0.01);
    }
    CHECK(bend(points) < 0.1);
  }
}
