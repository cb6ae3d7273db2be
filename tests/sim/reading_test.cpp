#include "sim/reading/reference_reader.hpp"
#include "sim/reading/stages.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace matula;
using reading::Grade;

namespace {

/// A tube whose every row looks the same, with the properties a test wants to vary.
struct Tube {
  double veil = 0.0; // added to the dark surround on black
  double contrast = 1.0;
  double granularity = 0.0;
  double piece_mm = 0.0;
  double clot = 0.0;
  optics::Xyz white{0.9, 0.95, 1.0};
};

appearance::Appearance looks_of(const Tube& tube) {
  appearance::Appearance a;
  a.level_mm = 60;
  for (int i = 0; i < 60; ++i) {
    appearance::Row row;
    row.height_mm = i + 0.5;
    row.thickness_mm = 1;
    row.on_white.fill(tube.white);
    row.on_black.fill({0.03 + tube.veil, 0.03 + tube.veil, 0.03 + tube.veil});
    row.print_contrast = tube.contrast;
    row.granularity = tube.granularity;
    a.rows.push_back(row);
  }
  if (tube.piece_mm > 0) {
    appearance::Piece piece;
    piece.size_mm = tube.piece_mm;
    a.pieces.push_back(piece);
  }
  a.clot_fraction = tube.clot;
  a.clot_to_mm = tube.clot * a.level_mm;
  return a;
}

reading::GradeReading read_acid(const Tube& tube, const reading::Thresholds& thresholds = {}) {
  const appearance::Appearance looks = looks_of(tube);
  return reading::read_grade(reading::ScaleKind::AcidCloud, {&looks, &looks, &looks}, thresholds);
}

} // namespace

TEST_CASE("grade words go both ways and refuse strangers") {
  for (const char* word : {"negative", "trace", "1+", "2+", "3+", "4+"}) {
    const auto grade = reading::grade_from_word(word);
    REQUIRE(grade);
    CHECK(reading::to_word(*grade) == word);
  }
  CHECK_FALSE(reading::grade_from_word("5+"));
  CHECK_FALSE(reading::grade_from_word("Negative"));
}

TEST_CASE("each line of the cloud scale is crossed by its own observable") {
  CHECK(read_acid({}).grade == Grade::Negative);
  CHECK(read_acid({.veil = 0.01}).grade == Grade::Trace);
  CHECK(read_acid({.veil = 0.2, .contrast = 0.4}).grade == Grade::OnePlus);
  CHECK(read_acid({.veil = 0.3, .contrast = 0.1, .granularity = 0.2, .piece_mm = 0.3}).grade ==
        Grade::TwoPlus);
  CHECK(read_acid({.veil = 0.3, .contrast = 0.1, .granularity = 0.2, .piece_mm = 1.5}).grade ==
        Grade::ThreePlus);
  CHECK(read_acid({.veil = 0.5, .contrast = 0.0, .granularity = 0.2, .piece_mm = 3, .clot = 0.8}).grade ==
        Grade::FourPlus);
}

TEST_CASE("a stray flake in a clear tube is not a precipitate") {
  CHECK(read_acid({.piece_mm = 2.0}).grade == Grade::Negative);
}

TEST_CASE("intensity rises with the cloud and stays within its grade") {
  double last = -1;
  for (double veil = 0; veil < 0.3; veil += 0.002) {
    const auto result = read_acid({.veil = veil, .contrast = std::exp(-6 * veil)});
    CHECK(result.intensity >= last);
    CHECK(std::abs(result.intensity - static_cast<double>(result.grade)) <= 0.5 + 1e-12);
    last = result.intensity;
  }
  CHECK(last > 1.5);
}

TEST_CASE("on a line the intensity is the line, from both sides") {
  const reading::Margins just_above{1.0, 1e-9, -1.0, -2.0, -3.0};
  const reading::Margins just_below{1.0, -1e-9, -1.0, -2.0, -3.0};
  CHECK(reading::highest_crossed(just_above) == Grade::OnePlus);
  CHECK(reading::highest_crossed(just_below) == Grade::Trace);
  CHECK(reading::intensity(Grade::OnePlus, just_above) == Approx(1.5).margin(1e-6));
  CHECK(reading::intensity(Grade::Trace, just_below) == Approx(1.5).margin(1e-6));
}

TEST_CASE("heat is judged against the tube's own unheated part") {
  appearance::Appearance looks = looks_of({.veil = 0.05, .contrast = 0.8});
  CHECK(reading::read_grade(reading::ScaleKind::HeatCloud, {&looks, &looks, &looks}, {}).grade ==
        Grade::Negative);
  for (auto& row : looks.rows) {
    if (row.height_mm > 36) {
      row.on_black.fill({0.2, 0.2, 0.2});
    }
  }
  CHECK(reading::read_grade(reading::ScaleKind::HeatCloud, {&looks, &looks, &looks}, {}).grade !=
        Grade::Negative);
}

TEST_CASE("an empty tube reads negative and says so") {
  const appearance::Appearance empty;
  const auto result = reading::read_grade(reading::ScaleKind::CopperColour, {&empty, &empty, &empty}, {});
  CHECK(result.grade == Grade::Negative);
  CHECK(result.seen == "an empty tube");
}
