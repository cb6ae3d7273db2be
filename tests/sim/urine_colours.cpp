// The words for the colour and the clarity of a specimen in its cup, held to defined compositions.
#include "bench_fixture.hpp"

#include "sim/reading/observables.hpp"
#include "sim/reading/reference_reader.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cstdlib>
#include <iostream>

using namespace matula;

namespace {

struct Named {
  const char* word;
  double a420;
  std::vector<std::pair<std::string, double>> mg_per_dl;
  std::vector<std::pair<std::string, double>> mg_per_l;
  std::vector<std::pair<std::string, double>> mmol_per_l;
};

const std::vector<Named>& compositions() {
  static const std::vector<Named> all{
      {"colourless", 0.02, {}, {}, {}},
      {"straw", 0.09, {}, {}, {}},
      {"yellow", 0.20, {}, {}, {}},
      {"dark yellow", 0.35, {}, {}, {}},
      {"amber", 0.60, {}, {}, {}},
      {"amber", 0.30, {{"bilirubin", 1}}, {}, {}},
      {"orange", 0.30, {{"bilirubin", 4}}, {}, {}},
      {"orange", 0.30, {{"bilirubin", 8}}, {}, {}},
      {"brown", 0.30, {{"bilirubin", 6}, {"biliverdin", 0.2}}, {}, {}},
      {"orange", 0.30, {{"urobilin", 1}}, {}, {}},
      {"pink", 0.02, {{"haemoglobin", 10}}, {}, {}},
      {"red", 0.20, {{"haemoglobin", 20}}, {}, {}},
      {"red", 0.20, {{"haemoglobin", 80}}, {}, {}},
      {"red-brown", 0.20, {{"haemoglobin", 48}, {"methaemoglobin", 32}}, {}, {}},
      {"brown", 0.20, {{"haemoglobin", 8}, {"methaemoglobin", 16}}, {{"cells", 160}}, {}},
      {"brown", 0.20, {{"methaemoglobin", 40}}, {}, {}},
      {"brown-black", 0.20, {}, {}, {{"homogentisate_polymer", 1.2}}},
      {"black", 0.30, {}, {}, {{"homogentisate_polymer", 3.0}}},
      {"green", 0.15, {{"biliverdin", 0.3}}, {}, {}},
  };
  return all;
}

appearance::Appearance cup_of(const Named& named, appearance::Card card) {
  bench::Setup s = test::setup();
  s.specimen.urochrome_a420 = named.a420;
  s.specimen.mg_per_dl = named.mg_per_dl;
  s.specimen.particles_mg_per_l = named.mg_per_l;
  for (const auto& more : named.mmol_per_l) {
    s.specimen.mmol_per_l.push_back(more);
  }
  const bench::State state = bench::begin(s);
  return bench::look(state, s, "specimen", {card, optics::Lamp::Daylight});
}

bool wants_print() {
  return std::getenv("MATULA_PRINT") != nullptr;
}

} // namespace

TEST_CASE("Each word for colour is read from the composition that defines it") {
  for (const Named& named : compositions()) {
    const auto looks = cup_of(named, appearance::Card::White);
    const auto word = reading::read_colour(looks, test::world().thresholds);
    if (wants_print()) {
      const auto lab =
          optics::to_lab(reading::mean_colour_on_white(looks, {0.2, 0.8}), {0.95047, 1.0, 1.08883});
      std::cout << named.word << " -> " << word << "  [" << lab.l << ", " << lab.a << ", " << lab.b << "]\n";
    }
    INFO(named.word << " at " << named.a420);
    CHECK(word == named.word);
  }
}

TEST_CASE("A normal urine deepens from straw to dark yellow with its pigment, never redder than amber") {
  const std::vector<std::string> order{"colourless", "straw", "yellow", "dark yellow", "amber"};
  std::size_t before = 0;
  for (double a420 = 0.01; a420 < 0.75; a420 += 0.04) {
    const auto word = reading::read_colour(cup_of({"", a420, {}, {}, {}}, appearance::Card::White),
                                           test::world().thresholds);
    const auto place = static_cast<std::size_t>(std::find(order.begin(), order.end(), word) - order.begin());
    INFO(a420 << " reads " << word);
    REQUIRE(place < order.size());
    CHECK(place >= before);
    before = place;
  }
  CHECK(before == order.size() - 1);
}

TEST_CASE("Cells make a specimen hazy, cloudy and turbid in turn") {
  struct Haze {
    double mg_per_l;
    const char* word;
  };
  // About 100 red cells in a microlitre weigh 10 mg/L.
  for (const Haze& haze :
       {Haze{0, "clear"}, Haze{5, "clear"}, Haze{15, "hazy"}, Haze{30, "hazy"}, Haze{70, "cloudy"},
        Haze{160, "cloudy"}, Haze{500, "turbid"}, Haze{1500, "turbid"}}) {
    const auto looks = cup_of({"", 0.2, {}, {{"cells", haze.mg_per_l}}, {}}, appearance::Card::Printed);
    INFO(haze.mg_per_l << " mg/L: contrast " << reading::mean_print_contrast(looks, {0.2, 0.8}));
    CHECK(reading::read_clarity(looks, test::world().thresholds) == haze.word);
  }
}
