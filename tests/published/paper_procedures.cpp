// Papers done by the book through the whole program: dipped, blotted, waited for, read by the reference
// reader.
#include "tests/published/protein_support.hpp"

#include <catch2/catch.hpp>

#include <string>

using namespace matula;
using test::by_the_book;
using test::rung;

namespace {

/// Word of a paper test at a dose.
std::string said(const std::string& test, double dose) {
  const auto* rule = test::shipped().standards.rules.find_test(test);
  return rule->word(rung(by_the_book(test), dose).read.grade);
}

} // namespace

TEST_CASE("every pad's ladder begins at its first word, never falls and ends above it") {
  for (const char* test : {"strip_bilirubin", "strip_blood", "strip_glucose", "strip_ketones",
                           "strip_leucocytes", "strip_nitrite", "strip_protein", "strip_urobilinogen"}) {
    INFO(test);
    double last = -1;
    for (const double dose : by_the_book(test).ladder_mg_per_dl) {
      const double intensity = rung(by_the_book(test), dose).read.intensity;
      CHECK(intensity >= last);
      CHECK((last >= 0 || intensity < 0.5));
      last = intensity;
    }
    CHECK(last > 1.4 - (std::string(test) == "strip_nitrite" ? 0.5 : 0));
  }
}

TEST_CASE("the strip in the program says the words of its own card") {
  // The card's steps: assets/papers.toml. A dip of a second and a blotted edge change nothing that shows.
  CHECK(said("strip_glucose", 0) == "negative");
  CHECK(said("strip_glucose", 100) == "trace");
  CHECK(said("strip_glucose", 1000) == "3+");
  CHECK(said("strip_protein", 40) == "1+");
  CHECK(said("strip_protein", 350) == "3+");
  CHECK(said("strip_nitrite", 0.6) == "positive");
  CHECK(said("ph_paper", 6) == "6");
}

TEST_CASE("Fouchet's test first turns green at 0.05-0.1 mg/dL of bilirubin and deepens to the last word") {
  // H. Varley, Practical Clinical Biochemistry, and Kassa, Wolde and Kibret 2002: 0.05-0.1 mg/dL, from
  // memory.
  const auto& recipe = by_the_book("fouchet");
  CHECK(said("fouchet", 0) == "negative");
  CHECK(said("fouchet", 0.05) == "negative");
  CHECK(said("fouchet", 0.1) == "1+");
  double last = -1;
  for (const double dose : recipe.ladder_mg_per_dl) {
    INFO(dose << " mg/dL");
    const auto made = rung(recipe, dose);
    CHECK(made.seen.colour_strength > last);
    CHECK(made.seen.colour_on_white.a < 0);
    last = made.seen.colour_strength;
  }
  // Where the strip begins, 0.4-0.8 mg/dL, the paper is green without doubt: from memory.
  CHECK(rung(recipe, 0.8).read.intensity > 1);
  CHECK(said("strip_bilirubin", 0.1) == "negative");
  CHECK(said("fouchet", 10) == "3+");
}

TEST_CASE("Both papers say the pH in half units, to half a unit") {
  // Indicator paper may be read to half a unit: common practice.
  for (const char* test : {"ph_paper", "strip_ph"}) {
    double last = 0;
    for (const double ph : by_the_book(test).ladder_mg_per_dl) {
      INFO(test << " at " << ph);
      const double read = std::stod(said(test, ph));
      CHECK(read == Approx(ph).margin(0.5));
      CHECK(read >= last);
      last = read;
    }
  }
}
