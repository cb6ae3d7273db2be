// Which sugar is it: Seliwanoff's and Bial's tests and fermentation. Selectivities: H. Varley, Practical
// Clinical Biochemistry, 1967, from memory, and common practice.
#include "tests/published/colour_support.hpp"

using namespace matula;
using namespace matula::tests;

namespace {

std::string word(const std::string& test, const std::string& sugar, double mg_per_dl) {
  return seen_by_the_book(test, {{sugar, mg_per_dl}}).word;
}

/// Share of a sugar left after a time with as much yeast suspension, at `bath_c`, with something else in the
/// urine.
double left_after_yeast(const std::string& sugar, double bath_c, const Doses& more = {},
                        double seconds = 3600) {
  Doses doses = more;
  doses.emplace_back(sugar, 1000);
  Worked worked = by_hand(doses);
  worked.act(bench::SetBath{bath_c});
  worked.act(bench::Wait{1800});
  worked.act(bench::Pour{"specimen", "tube-1", 5, false});
  const double before = worked.held_mmol(worked.state.vessels.at("tube-1").column, sugar);
  worked.act(bench::Dispense{"yeast_suspension", "tube-1", 5, false});
  worked.act(bench::Mix{"tube-1", bench::Manner::Invert, 5});
  worked.act(bench::Move{"tube-1", bench::Place::Bath, 0.5, false, true});
  worked.act(bench::Wait{seconds});
  return worked.held_mmol(worked.state.vessels.at("tube-1").column, sugar) / before;
}

} // namespace

TEST_CASE("Seliwanoff's reagent shows a tenth of a per cent of fructose") {
  CHECK(word("seliwanoff", "fructose", 20) == "negative");
  CHECK(word("seliwanoff", "fructose", 110) == "positive");
  CHECK(word("seliwanoff", "fructose", 1000) == "strong positive");
}

TEST_CASE("other sugars do not turn it red in the time of the test") {
  CHECK(seen_by_the_book("seliwanoff", {}).word == "negative");
  CHECK(word("seliwanoff", "glucose", 1000) == "negative");
  CHECK(word("seliwanoff", "galactose", 1000) == "negative");
  CHECK(word("seliwanoff", "lactose", 1000) == "negative");
  CHECK(word("seliwanoff", "maltose", 1000) == "negative");
  CHECK(word("seliwanoff", "xylose", 500) == "negative");
}

TEST_CASE("cane sugar turns it red, for it falls into fructose and glucose") {
  CHECK(word("seliwanoff", "sucrose", 500) == "positive");
}

TEST_CASE("much glucose heated long turns it red") {
  Worked worked = by_hand({{"glucose", 2500}});
  worked.act(bench::SetBath{100});
  worked.act(bench::Wait{1800});
  worked.act(bench::Dispense{"seliwanoff", "tube-1", 5, false});
  worked.act(bench::Pour{"specimen", "tube-1", 0.5, false});
  worked.act(bench::Mix{"tube-1", bench::Manner::Invert, 3});
  worked.act(bench::Move{"tube-1", bench::Place::Bath, 0.5, false, true});
  worked.act(bench::Wait{900});
  CHECK(worked.read("seliwanoff").word != "negative");
}

TEST_CASE("Bial's reagent goes blue-green with a pentose and yellow or brown with a hexose") {
  CHECK(seen_by_the_book("bial", {}).word == "negative");
  CHECK(word("bial", "xylose", 110) == "positive");
  CHECK(seen_by_the_book("bial", {{"xylose", 500}}).lab.a < -8);
  for (const char* sugar : {"glucose", "galactose", "lactose", "maltose"}) {
    INFO(sugar);
    CHECK(word("bial", sugar, 1000) == "negative");
  }
  const ColourSeen fructose = seen_by_the_book("bial", {{"fructose", 1000}});
  CHECK(fructose.word == "negative");
  CHECK(fructose.lab.b > 20);
}

TEST_CASE("yeast eats glucose, fructose and maltose, and leaves lactose, pentoses and nearly all galactose") {
  CHECK(left_after_yeast("glucose", 37) < 0.02);
  CHECK(left_after_yeast("fructose", 37) < 0.02);
  CHECK(left_after_yeast("maltose", 37) < 0.3);
  CHECK(left_after_yeast("galactose", 37) > 0.85);
  CHECK(left_after_yeast("lactose", 37) == Approx(1).epsilon(1e-6));
  CHECK(left_after_yeast("xylose", 37) == Approx(1).epsilon(1e-6));
}

TEST_CASE("Benedict's test after an hour of yeast tells glucose from lactose") {
  CHECK(word("benedict", "glucose", 1000) == "2+");
  CHECK(word("fermentation", "glucose", 1000) == "negative");
  CHECK(word("fermentation", "lactose", 1000) == word("benedict", "lactose", 1000));
  CHECK(word("fermentation", "xylose", 1000) != "negative");
}

TEST_CASE(
    "yeast works slowly in the cold, not at all when scalded or in a urine kept with fluoride or formalin") {
  CHECK(left_after_yeast("glucose", 22, {}, 600) > left_after_yeast("glucose", 37, {}, 600) + 0.2);
  CHECK(left_after_yeast("glucose", 70) > 0.8);
  CHECK(left_after_yeast("glucose", 37, {{"formaldehyde", mg_per_dl("formaldehyde", 100)}}) > 0.8);
}
