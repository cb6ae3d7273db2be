// Papers done by the book through the whole program: dipped, blotted, waited for, read by the reference
// reader.
#include "tests/published/protein_support.hpp"

#include <catch2/catch.hpp>

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
  CHECK(said("ph_paper", 0) == "6");
}
