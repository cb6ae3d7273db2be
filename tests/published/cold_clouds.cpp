// Clouds that come in the refrigerator. Acid urine: urates, which warming clears. Alkaline urine: phosphates,
// which warming does not clear and acid does (WHO 2003, p. 247; S.K. Strasinger 2014, from memory). Calcium
// phosphate is most soluble near 25 C and falls out when hot: T.M. Gregory, E.C. Moreno and W.E. Brown, J.
// Res. Natl. Bur. Stand. 74A (1970) 461.
#include "tests/published/colour_support.hpp"

#include "sim/reaction/solubility.hpp"

using namespace matula;
using namespace matula::tests;

namespace {

using Amounts = std::vector<std::pair<std::string, double>>;

const Amounts acid_urine{{"sodium", 130}, {"potassium", 60},  {"ammonium", 35},  {"urea", 400},
                         {"calcium", 4},  {"magnesium", 3.5}, {"phosphate", 30}, {"sulphate", 22},
                         {"citrate", 2},  {"creatinine", 14}, {"urate", 4.5},    {"other_organics", 30}};
const Amounts alkaline_urine{{"sodium", 115},    {"potassium", 50}, {"ammonium", 25},  {"urea", 250},
                             {"calcium", 3.5},   {"magnesium", 3},  {"phosphate", 26}, {"sulphate", 16},
                             {"citrate", 2},     {"creatinine", 9}, {"urate", 1.2},    {"other_organics", 20},
                             {"bicarbonate", 30}};

/// The specimen on the bench after so long in the refrigerator, or fresh.
Worked brought(const Amounts& mmol_per_l, double ph, double hours_at_4_c) {
  Worked worked{bench_with({}, standards().recipes.begin()->second), {}, "tube-1"};
  worked.setup.tube_count = 1;
  specimen::Specimen& s = worked.setup.specimen;
  s.mmol_per_l = mmol_per_l;
  s.target_ph = ph;
  if (hours_at_4_c > 0) {
    s.life = {{hours_at_4_c, 4, false, 0}};
  }
  worked.state = bench::begin(worked.setup);
  worked.act(bench::Protect{true, true});
  worked.act(bench::Mix{"specimen", bench::Manner::Swirl, 10});
  worked.act(bench::Pour{"specimen", "tube-1", 8, false});
  return worked;
}

double mg_per_l(const Worked& worked, const std::string& solid) {
  const auto& catalogue = *worked.setup.chemistry->catalogue;
  const auto whole = column::whole(worked.state.vessels.at("tube-1").column, catalogue);
  return 1e6 * whole.populations[catalogue.find_particle(solid).value()].total_g() / whole.volume_ml;
}

double print_contrast(const Worked& worked) {
  return scoring::observe(worked.state, worked.setup, "tube-1", standards().rules.find_test("heat")->scale)
      .print_contrast;
}

double phosphates_mg_per_l(const Worked& worked) {
  return mg_per_l(worked, "calcium_phosphate") + mg_per_l(worked, "triple_phosphate");
}

void warm(Worked& worked, double temperature_c, double seconds) {
  worked.act(bench::SetBath{temperature_c});
  worked.act(bench::Move{"tube-1", bench::Place::Bath, 0.5, false, true});
  worked.act(bench::Wait{seconds});
  worked.act(bench::Move{"tube-1", bench::Place::Rack, 0.5, false, true});
  worked.act(bench::Mix{"tube-1", bench::Manner::Invert, 3});
}

} // namespace

TEST_CASE("acid urine clouds with urates in the refrigerator and clears at 37 and at 60 C") {
  CHECK(print_contrast(brought(acid_urine, 5.4, 0)) > 0.8);
  for (const double temperature_c : {37.0, 60.0}) {
    INFO(temperature_c << " C");
    Worked cold = brought(acid_urine, 5.4, 8);
    CHECK(print_contrast(cold) < 0.5);
    CHECK(mg_per_l(cold, "urate") > 100);
    CHECK(phosphates_mg_per_l(cold) < 1);
    warm(cold, temperature_c, 900);
    CHECK(mg_per_l(cold, "urate") < 10);
    CHECK(print_contrast(cold) > 0.8);
  }
}

TEST_CASE("alkaline urine clouds with phosphates in the refrigerator; warmth leaves them, acid clears them") {
  CHECK(print_contrast(brought(alkaline_urine, 7.4, 0)) > 0.8);
  Worked cold = brought(alkaline_urine, 7.4, 8);
  const double before = phosphates_mg_per_l(cold);
  CHECK(before > 10);
  CHECK(mg_per_l(cold, "urate") < 1);
  CHECK(print_contrast(cold) < 0.95); // a haze: much of it is coarse triple phosphate
  Worked warmed = cold;
  warm(warmed, 60, 900);
  CHECK(phosphates_mg_per_l(warmed) > 0.8 * before);
  CHECK(print_contrast(warmed) < 0.6);
  cold.act(bench::Dispense{"acetic_acid_10", "tube-1", 0.5, false});
  for (int again = 0; again < 6;
       ++again) { // Shaken up now and then, or the crystals lie in their own liquid.
    cold.act(bench::Mix{"tube-1", bench::Manner::Invert, 5});
    cold.act(bench::Wait{60});
  }
  CHECK(phosphates_mg_per_l(cold) < 1);
  CHECK(print_contrast(cold) > 0.8);
}

TEST_CASE("the same phosphate in acid urine stays in solution in the cold") {
  CHECK(phosphates_mg_per_l(brought(alkaline_urine, 5.8, 8)) < 1);
}

TEST_CASE(
    "calcium phosphate follows its measured product: highest near 25 C, less at 5 and 37.5, least when hot") {
  // Gregory, Moreno and Brown 1970: pK 6.63 at 5 C, 6.59 at 25 C, 6.63 at 37.5 C (from memory; 6.59 and 6.63
  // at 25 and 37 C also in S.V. Dorozhkin's tables). What is at rest with the solid goes with the root of it.
  const auto& network = colour_world().chemistry;
  const auto& row = *std::find_if(network.precipitations.begin(), network.precipitations.end(),
                                  [](const auto& each) { return each.key == "calcium_phosphate"; });
  const auto& catalogue = colour_world().catalogue;
  const auto product = [&](double temperature_c) {
    matter::Mixture m = matter::empty_mixture(catalogue);
    m.volume_ml = 1;
    const reaction::Conditions now{temperature_c, 7, 0};
    for (const auto& [id, count] : row.formula) {
      m.mmol[id] = 0.02;
    }
    const double solid = reaction::distance_to_rest(row, m, catalogue, now, 0);
    return (0.02 - solid) * (0.02 - solid);
  };
  CHECK(std::log10(product(25) / product(5)) == Approx(0.04).margin(0.02));
  CHECK(std::log10(product(25) / product(37.5)) == Approx(0.04).margin(0.02));
  CHECK(product(100) < 0.35 * product(25));
}
