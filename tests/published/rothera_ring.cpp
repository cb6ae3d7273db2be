// Rothera's test done by the book. Least acetoacetate seen 1 to 5 mg/dL, least acetone 10 to 25 mg/dL;
// acetoacetate is 10 to 20 times as strong as acetone, beta-hydroxybutyrate does not react: an Essentials of
// Clinical Pathology text, ch. 1 (S.R. Kawthalkar, from memory). Grades by time: at once 3+, within 30 s 2+,
// within 2 min 1+, within 5 min trace: Basic Concepts in Clinical Biochemistry, ch. 30, and teaching pages.
#include "tests/published/protein_support.hpp"

#include "sim/reading/colour_strength.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace matula;
using test::rung;

namespace {

const scoring::Recipe& book() {
  return test::by_the_book("rothera");
}

const reading::Scale& scale() {
  return test::shipped().standards.rules.find_test("rothera")->scale;
}

specimen::Specimen with(const std::string& key, double mg_per_dl) {
  auto urine = test::shipped().plain;
  urine.mg_per_dl.emplace_back(key, mg_per_dl);
  return urine;
}

reading::Grade grade(double acetoacetate_mg_per_dl) {
  return rung(book(), acetoacetate_mg_per_dl).read.grade;
}

reading::Grade grade_of(const std::string& key, double mg_per_dl) {
  return rung(book(), 0, with(key, mg_per_dl)).read.grade;
}

scoring::Recipe read_after(double seconds) {
  scoring::Recipe hasty = book();
  hasty.steps.back().seconds = seconds;
  return hasty;
}

/// Seconds after the ammonia at which the first ring is seen, of those tried; a large number for never.
double first_seen_s(double mg_per_dl) {
  for (const double seconds : {5.0, 30.0, 60.0, 120.0, 240.0, 300.0}) {
    if (rung(read_after(seconds), mg_per_dl).read.grade > reading::Grade::Negative) {
      return seconds;
    }
  }
  return 1e9;
}

/// mg/dL of a ketone, by halving, at which the ring has the strength of the first line.
double least_seen(const std::string& key) {
  double low = 0.2;
  double high = 100;
  while (high / low > 1.05) {
    const double middle = std::sqrt(low * high);
    (grade_of(key, middle) > reading::Grade::Negative ? high : low) = middle;
  }
  return high;
}

scoring::BookTube tube_of(double mg_per_dl, const scoring::Recipe& way, bench::Setup& setup) {
  setup = scoring::ladder_setup(*test::shipped().world, test::shipped().plain, way, mg_per_dl);
  auto tube = scoring::ladder_tube(setup, way);
  REQUIRE(tube.stopped_because.empty());
  return tube;
}

/// Height over which the colour has at least half its greatest strength, mm.
double ring_mm(const appearance::Appearance& white) {
  std::vector<double> strengths;
  for (const appearance::Row& row : white.rows) {
    strengths.push_back(reading::colour_strength(row.on_white.front(), scale().colour.hue_deg));
  }
  const double half = 0.5 * *std::max_element(strengths.begin(), strengths.end());
  const auto above =
      std::count_if(strengths.begin(), strengths.end(), [half](double s) { return s >= half; });
  return static_cast<double>(above) * white.rows.front().thickness_mm;
}

} // namespace

TEST_CASE("Rothera: the least acetoacetate and the least acetone seen, and their ratio") {
  const double acetoacetate = least_seen("acetoacetate");
  const double acetone = least_seen("acetone");
  CAPTURE(acetoacetate, acetone);
  CHECK(acetoacetate > 1);
  CHECK(acetoacetate < 5);
  CHECK(acetone > 10);
  CHECK(acetone < 25);
  // By substance: 102.1 and 58.1 g/mol.
  const double ratio = (acetone / 58.08) / (acetoacetate / 102.09);
  CHECK(ratio > 10);
  CHECK(ratio < 20);
}

TEST_CASE("Rothera: blind to beta-hydroxybutyrate, brown without ketones") {
  CHECK(grade(0) == reading::Grade::Negative);
  CHECK(grade_of("beta_hydroxybutyrate", 600) == reading::Grade::Negative);
  CHECK(grade_of("creatinine", 200) == reading::Grade::Negative);
}

TEST_CASE("Rothera: more acetoacetate never reads less, and all grades are reached") {
  auto before = reading::Grade::Negative;
  for (const double mg_per_dl : {0, 1, 3, 6, 10, 15, 20, 30, 50, 80, 120, 200}) {
    CAPTURE(mg_per_dl);
    const auto now = grade(mg_per_dl);
    CHECK(now >= before);
    before = now;
  }
  CHECK(before == reading::Grade::ThreePlus);
}

TEST_CASE("Rothera: the stronger the grade, the sooner the ring is there") {
  CHECK(first_seen_s(5) <= 300);  // trace: within 5 min
  CHECK(first_seen_s(20) <= 120); // 1+: within 2 min
  CHECK(first_seen_s(50) <= 30);  // 2+: within half a minute
  CHECK(first_seen_s(150) <= 5);  // 3+: at once
  CHECK(first_seen_s(5) > first_seen_s(50));
}

TEST_CASE("Rothera: a ring a few millimetres thick that grows, and that shaking blurs") {
  bench::Setup setup;
  const auto young = tube_of(30, read_after(30), setup);
  const double young_mm = ring_mm(bench::look(young.state, setup, young.vessel, {}));
  auto tube = tube_of(30, book(), setup);
  const auto white = bench::look(tube.state, setup, tube.vessel, {});
  const double old_mm = ring_mm(white);
  CAPTURE(young_mm, old_mm);
  CHECK(old_mm >= young_mm);
  CHECK(old_mm > 1); // sqrt(4 D t) is 1.1 mm after 4 min
  CHECK(old_mm < 6);
  const double ring = reading::strength_seen(white, scale().colour);
  REQUIRE(bench::perform(tube.state, setup, bench::Mix{tube.vessel, bench::Manner::Invert, 5}).done);
  const auto shaken = bench::look(tube.state, setup, tube.vessel, {});
  CHECK(reading::strength_seen(shaken, scale().colour) < 0.6 * ring);
  CHECK(ring_mm(shaken) > 20);
}

TEST_CASE("Rothera: what goes wrong gives what it gives at the bench") {
  // Powder opened last year, no ammonia run in gently, no powder to speak of.
  auto old = book();
  auto poured = book();
  auto starved = book();
  for (auto& step : old.steps) {
    step.reagent = step.reagent == "rothera_powder" ? "rothera_powder_old" : step.reagent;
  }
  for (auto& step : poured.steps) {
    step.gently = false;
  }
  for (auto& step : starved.steps) {
    step.volume_ml = step.reagent == "rothera_powder" ? 0.3 : step.volume_ml;
  }
  const double right = rung(book(), 15).seen.colour_strength;
  CHECK(rung(old, 15).seen.colour_strength < 0.3 * right);
  bench::Setup setup;
  const auto tube = tube_of(15, poured, setup);
  CHECK(ring_mm(bench::look(tube.state, setup, tube.vessel, {})) > 10); // no ring: a broad purple part
  CHECK(rung(starved, 15).seen.colour_strength < 0.9 * right);          // though nothing thins the urine
}

TEST_CASE("Rothera: free thiols and phenylpyruvate are taken for ketones") {
  CHECK(grade_of("thiol_drug", 100) > reading::Grade::Negative);
  CHECK(grade_of("phenylpyruvate", 100) > reading::Grade::Negative);
}

TEST_CASE("Rothera: about 4 g of the salt saturate 5 mL, and the rest lies at the bottom") {
  // 0.9 g a heaped mL; 75.4 g in 100 g of water at 20 °C: CRC Handbook, from memory.
  bench::Setup setup;
  const auto tube = tube_of(0, book(), setup);
  const auto& catalogue = test::shipped().world->catalogue;
  const auto all = column::whole(tube.state.vessels.at(tube.vessel).column, catalogue);
  const double left_g = all.populations[*catalogue.find_particle("ammonium_sulphate")].total_g();
  const double dissolved_g = 0.891 * 5 - left_g;
  CHECK(dissolved_g > 3.5);
  CHECK(dissolved_g < 4.2);
  CHECK(left_g > 0.1);
}
