// Ehrlich's aldehyde test and its extraction. Least urobilinogen seen 0.2-0.4 mg/dL, normal to 1 mg/dL (from
// memory); urobilinogen's colour goes into chloroform, porphobilinogen's stays above (Essentials of Clinical
// Pathology, chapter 1; Basic Concepts in Clinical Biochemistry, p. 126).
#include "tests/published/colour_support.hpp"

using namespace matula;
using namespace matula::tests;

namespace {

const double attack_mg_per_dl = 9.1;      // porphobilinogen 0.4 mmol/L, as in an attack: from memory
const double healthy_pbg_mg_per_dl = 0.2; // under 10 umol/L: J. Clin. Pathol., from memory

/// CIELAB a* of the middle of the upper liquid.
double redness_above(const Worked& worked) {
  const auto white = bench::look(worked.state, worked.setup, worked.vessel, {});
  const double border = white.heavy_to_mm / white.level_mm;
  const auto colour = reading::mean_colour_on_white(white, {border + 0.1, 0.95});
  return optics::to_lab(colour, {0.95047, 1.0, 1.08883}).a;
}

/// Share of the dye that is in the chloroform.
double share_below(const Worked& worked, const std::string& dye) {
  const auto& column = worked.state.vessels.at(worked.vessel).column;
  const auto id = worked.setup.chemistry->catalogue->find_species(dye).value();
  return column.heavy.mmol[id] / worked.held_mmol(column, dye);
}

/// Urine and reagent, read after `seconds`.
double strength_after(const Doses& doses, double seconds) {
  Worked worked = by_hand(doses);
  worked.act(bench::Pour{"specimen", "tube-1", 5, false});
  worked.act(bench::Dispense{"ehrlich", "tube-1", 0.5, false});
  worked.act(bench::Mix{"tube-1", bench::Manner::Invert, 3});
  worked.act(bench::Wait{seconds - 3});
  return worked.read("ehrlich").strength;
}

} // namespace

TEST_CASE("urobilinogen is seen from 0.2-0.4 mg/dL on, is normal up to 1 and raised from 2") {
  CHECK(seen_by_the_book("ehrlich", {}).word == "absent");
  CHECK(seen_by_the_book("ehrlich", {{"urobilinogen", 0.2}}).word == "absent");
  CHECK(seen_by_the_book("ehrlich", {{"urobilinogen", 0.4}}).word == "normal");
  CHECK(seen_by_the_book("ehrlich", {{"urobilinogen", 1}}).word == "normal");
  CHECK(seen_by_the_book("ehrlich", {{"urobilinogen", 2}}).word == "raised");
  CHECK(seen_by_the_book("ehrlich", {{"urobilinogen", 4}}).word == "raised");
  CHECK(seen_by_the_book("ehrlich", {{"urobilinogen", 10}}).word == "much raised");
}

TEST_CASE("more urobilinogen is always a stronger red") {
  double last = -1;
  for (const double dose : {0.0, 0.2, 0.5, 1.0, 2.0, 4.0, 8.0, 16.0, 30.0}) {
    const double strength = seen_by_the_book("ehrlich", {{"urobilinogen", dose}}).strength;
    CHECK(strength > last);
    last = strength;
  }
}

TEST_CASE("the colour comes in three to five minutes") {
  const Doses raised{{"urobilinogen", 2}};
  const double at_240 = strength_after(raised, 240);
  CHECK(strength_after(raised, 20) < 0.5 * at_240);
  CHECK(strength_after(raised, 180) > 0.85 * at_240);
  CHECK(strength_after(raised, 300) < 1.1 * at_240);
}

TEST_CASE("porphobilinogen of an attack is red too, that of the healthy is not") {
  CHECK(seen_by_the_book("ehrlich", {{"porphobilinogen", healthy_pbg_mg_per_dl}}).word == "absent");
  const ColourSeen attack = seen_by_the_book("ehrlich", {{"porphobilinogen", attack_mg_per_dl}});
  CHECK((attack.word == "raised" || attack.word == "much raised"));
}

TEST_CASE("chloroform takes urobilinogen's colour and leaves porphobilinogen's") {
  const Worked urobilinogen = by_the_book("ehrlich_chloroform", {{"urobilinogen", 4}});
  CHECK(urobilinogen.read("ehrlich_chloroform").word == "chloroform red");
  CHECK(share_below(urobilinogen, "ehrlich_red") > 0.85);
  const Worked porphobilinogen = by_the_book("ehrlich_chloroform", {{"porphobilinogen", attack_mg_per_dl}});
  CHECK(porphobilinogen.read("ehrlich_chloroform").word == "chloroform colourless");
  CHECK(share_below(porphobilinogen, "ehrlich_porphobilinogen") < 0.02);
  CHECK(redness_above(porphobilinogen) > 25);
  CHECK(redness_above(urobilinogen) < 18);
}

TEST_CASE("the acid of the reagent alone keeps the colour out of chloroform: acetate first") {
  Worked worked = by_hand({{"urobilinogen", 4}});
  worked.act(bench::Pour{"specimen", "tube-1", 5, false});
  worked.act(bench::Dispense{"ehrlich", "tube-1", 0.5, false});
  worked.act(bench::Mix{"tube-1", bench::Manner::Invert, 3});
  worked.act(bench::Wait{240});
  worked.act(bench::Dispense{"chloroform", "tube-1", 2, false});
  worked.act(bench::Mix{"tube-1", bench::Manner::Invert, 120});
  CHECK(share_below(worked, "ehrlich_red") < 0.15);
  worked.act(bench::Dispense{"sodium_acetate_saturated", "tube-1", 0.5, false});
  worked.act(bench::Mix{"tube-1", bench::Manner::Invert, 120});
  CHECK(share_below(worked, "ehrlich_red") > 0.85);
}

TEST_CASE("much indican feigns urobilinogen, stays out of chloroform; a little does not show") {
  CHECK(seen_by_the_book("ehrlich", {{"indican", mg_per_dl("indican", 0.1)}}).word == "absent");
  const Doses much{{"indican", mg_per_dl("indican", 1)}};
  CHECK(seen_by_the_book("ehrlich", much).word != "absent");
  CHECK(seen_by_the_book("ehrlich_chloroform", much).word == "chloroform colourless");
}

TEST_CASE("a sulphonamide turns the reagent yellow, not red") {
  const ColourSeen plain = seen_by_the_book("ehrlich", {});
  const ColourSeen drug = seen_by_the_book("ehrlich", {{"sulphonamide", mg_per_dl("sulphonamide", 1)}});
  CHECK(drug.lab.b > plain.lab.b + 15);
  CHECK(drug.word == "absent");
}

TEST_CASE("nitrite and formalin hide urobilinogen") {
  const double whole = seen_by_the_book("ehrlich", {{"urobilinogen", 2}}).strength;
  const double with_nitrite =
      seen_by_the_book("ehrlich", {{"urobilinogen", 2}, {"nitrite", mg_per_dl("nitrite", 0.3)}}).strength;
  CHECK(with_nitrite < 0.6 * whole);
  // Eight drops of 10 % formalin in 30 mL: WHO 2003, p. 93.
  const double with_formalin =
      seen_by_the_book("ehrlich", {{"urobilinogen", 2}, {"formaldehyde", mg_per_dl("formaldehyde", 18)}})
          .strength;
  CHECK(with_formalin < 0.6 * whole);
}
