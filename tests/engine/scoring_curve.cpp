// A curve of standards: read off the learner's own points, each line judged from the learner's own line
// before it.
#include "engine/scoring/curve.hpp"

#include <catch2/catch.hpp>

using namespace matula;
using procedure::CurveLine;
using scoring::CurveEntries;

namespace {

procedure::Curve curve() {
  procedure::Curve made;
  made.standards = {"a", "b", "c", "d"};
  made.values = {25, 50, 100, 150};
  return made;
}

/// 0.004 for each mg/dL; a blank of 0.040; a specimen of 60 mg/dL in the tube, diluted five times.
CurveEntries good() {
  CurveEntries entries;
  entries.blank = 0.040;
  entries.standards = {0.100, 0.200, 0.400, 0.600};
  entries.sample = 0.280;
  entries.net = "0.240";
  entries.read = "60";
  entries.dilution = "5";
  entries.value = "300";
  entries.own_dilution = 5;
  return entries;
}

std::vector<bool> rights(const CurveEntries& entries) {
  std::vector<bool> found;
  for (const auto& one : scoring::mark_curve_lines(curve(), "mg/dL", entries)) {
    INFO(one.judged.reason);
    found.push_back(one.judged.right);
  }
  return found;
}

std::string reason(const CurveEntries& entries, CurveLine line) {
  for (const auto& one : scoring::mark_curve_lines(curve(), "mg/dL", entries)) {
    if (one.line == line) {
      return one.judged.reason;
    }
  }
  return "";
}

bool says(const CurveEntries& entries, CurveLine line, const std::string& words) {
  INFO(reason(entries, line));
  return reason(entries, line).find(words) != std::string::npos;
}

using Rights = std::vector<bool>;
const Rights all_right{true, true, true, true};

} // namespace

TEST_CASE("A curve is read from point to point, beyond its end along the last piece, and by straight lines") {
  const scoring::OwnCurve bent{{0, 0}, {50, 0.1}, {100, 0.3}};
  CHECK(scoring::read_off(bent, 0.2).front() == Approx(75));
  CHECK(scoring::read_off(bent, 0.05).front() == Approx(25));
  CHECK(scoring::read_off(bent, 0.4).front() == Approx(125));
  // Least squares by hand: slope 0.003 with a start of -1/60; through the origin 35/12500.
  CHECK(scoring::read_off(bent, 0.2)[1] == Approx((0.2 + 1.0 / 60) / 0.003));
  CHECK(scoring::read_off(bent, 0.2)[2] == Approx(0.2 * 12500 / 35));
  CHECK(scoring::read_off({{0, 0}}, 0.2).empty());
  CHECK(scoring::read_off({{0, 0}, {50, 0}}, 0.2).empty()); // a flat curve tells nothing
}

TEST_CASE("A worked curve is right line by line, by point-to-point and by a ruler's line alike") {
  CHECK(rights(good()) == all_right);
  auto ruler = good();
  ruler.standards[1] = 0.190; // one point low: from point to point 60.5, by a line 60.3
  ruler.read = "62.1";
  CHECK(rights(ruler)[1]);
  ruler.read = "66";
  CHECK_FALSE(rights(ruler)[1]);
}

TEST_CASE("A slip is paid for once: later lines go on from the learner's own") {
  auto entries = good();
  entries.net = "0.280"; // blank forgotten
  entries.read = "70";
  entries.value = "350";
  CHECK(rights(entries) == Rights{false, true, true, true});
  CHECK(says(entries, CurveLine::Net, "the blank was not taken off"));

  entries = good();
  entries.net = "0.320"; // blank added
  entries.read = "80";
  entries.value = "400";
  CHECK(rights(entries) == Rights{false, true, true, true});
  CHECK(says(entries, CurveLine::Net, "added"));

  entries = good();
  entries.read = "70"; // net is right, but it was entered with the specimen's own absorbance
  entries.value = "350";
  CHECK(rights(entries) == Rights{true, false, true, true});
  CHECK(says(entries, CurveLine::Read, "with the blank still in it"));

  entries = good();
  entries.read = "600"; // mg/L
  entries.value = "3000";
  CHECK(rights(entries) == Rights{true, false, true, true});
  CHECK(says(entries, CurveLine::Read, "ten times too much"));

  entries = good();
  entries.dilution = "4";
  entries.value = "240";
  CHECK(rights(entries) == Rights{true, true, false, true});
  CHECK(says(entries, CurveLine::Dilution, "five in all"));

  entries = good();
  entries.value = "60";
  CHECK(rights(entries) == Rights{true, true, true, false});
  CHECK(says(entries, CurveLine::Value, "not multiplied by the dilution"));

  entries = good();
  entries.value = "12";
  CHECK(says(entries, CurveLine::Value, "divided by the dilution"));
}

TEST_CASE("The curve is the learner's own, even where a point was misread") {
  auto entries = good();
  entries.standards = {0.100, 0.200, 0.300, 0.400}; // the two strong ones misread
  entries.read = "70";                              // on that curve 0.240 stands at 70
  entries.value = "350";
  CHECK(rights(entries) == all_right);
  entries.read = "60"; // right for the bottles, not for the curve on this paper
  CHECK_FALSE(rights(entries)[1]);
}

TEST_CASE("What was left out is named, and an undiluted specimen needs no line for it") {
  auto entries = good();
  entries.own_dilution = 1;
  entries.dilution = "";
  entries.value = "60";
  CHECK(rights(entries) == all_right);
  entries.own_dilution = 5;
  CHECK(rights(entries) == Rights{true, true, false, false});
  CurveEntries nothing;
  nothing.standards = {std::nullopt, std::nullopt, std::nullopt, std::nullopt};
  CHECK(rights(nothing) == Rights{false, false, false, false});
  CHECK(says(nothing, CurveLine::Net, "never read"));
  CHECK(says(nothing, CurveLine::Read, "no rising curve"));
  CHECK(says(nothing, CurveLine::Value, "no figure of your own"));
}
