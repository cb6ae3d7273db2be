#include "engine/scoring/curve.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace matula::scoring {
namespace {

using procedure::CurveLine;
using reception::DayNumber;
using reception::say;

constexpr double absorbance_rounding = 0.0015; // Two figures of three decimals, each rounded.
constexpr double relative_rounding = 0.02;     // Of a product worked with figures as a person writes them.
constexpr double undiluted_within = 0.02;

/// Where the straight piece between two points stands at an absorbance.
double on_piece(const std::pair<double, double>& from, const std::pair<double, double>& to,
                double absorbance) {
  return from.first + (to.first - from.first) * (absorbance - from.second) / (to.second - from.second);
}

void read_pieces(const OwnCurve& curve, double absorbance, std::vector<double>& found) {
  for (std::size_t i = 1; i < curve.size(); ++i) {
    const bool rises = curve[i].second > curve[i - 1].second;
    const bool inside = absorbance >= curve[i - 1].second && absorbance <= curve[i].second;
    const bool below = i == 1 && absorbance < curve[i - 1].second;
    const bool beyond = i + 1 == curve.size() && absorbance > curve[i].second;
    if (rises && (inside || below || beyond)) {
      found.push_back(on_piece(curve[i - 1], curve[i], absorbance));
    }
  }
}

void read_line(const OwnCurve& curve, double absorbance, bool through_origin, std::vector<double>& found) {
  double n = 0;
  double x = 0;
  double y = 0;
  double xx = 0;
  double xy = 0;
  for (const auto& [value, seen] : curve) {
    n += 1;
    x += value;
    y += seen;
    xx += value * value;
    xy += value * seen;
  }
  const double spread = through_origin ? xx : n * xx - x * x;
  const double slope = spread > 0 ? (through_origin ? xy : n * xy - x * y) / spread : 0;
  if (slope > 0) {
    const double start = through_origin ? 0 : (y - slope * x) / n;
    found.push_back((absorbance - start) / slope);
  }
}

/// The candidate nearest to what was written; the first where nothing was.
double nearest(const std::vector<double>& candidates, const std::string& entered) {
  const auto written = reception::number_of(entered);
  if (!written) {
    return candidates.front();
  }
  return *std::min_element(candidates.begin(), candidates.end(), [&](double a, double b) {
    return std::abs(a - *written) < std::abs(b - *written);
  });
}

OwnCurve own_curve(const procedure::Curve& curve, const CurveEntries& entries) {
  OwnCurve points{{0.0, 0.0}};
  for (std::size_t i = 0; i < curve.values.size() && i < entries.standards.size(); ++i) {
    if (entries.standards[i]) {
      points.emplace_back(curve.values[i], *entries.standards[i]);
    }
  }
  return points;
}

/// The calculation as it is worked through.
struct Work {
  const procedure::Curve& curve;
  const std::string& unit;
  const CurveEntries& entries;
  std::vector<CurveVerdict> lines{};

  double take(CurveLine line, const DayNumber& number, const std::string& entered) {
    auto worked = reception::judge_number(number, entered);
    lines.push_back({line, std::move(worked.line)});
    return worked.own;
  }
  /// A line nothing leads to: only what was written can be gone on from.
  double skip(CurveLine line, const std::string& entered, const std::string& why) {
    reception::DayLine judged;
    judged.entered = entered;
    judged.reason = why;
    lines.push_back({line, std::move(judged)});
    return reception::number_of(entered).value_or(0);
  }

  double net();
  double read(double own_net);
  double dilution();
  void value(double own_read, double own_dilution);
};

double Work::net() {
  if (!entries.sample) {
    return skip(CurveLine::Net, entries.net, "The specimen with its reagent was never read.");
  }
  const double sample = *entries.sample;
  const double blank = entries.blank.value_or(0);
  DayNumber number;
  number.expected = sample - blank;
  number.tolerance = absorbance_rounding;
  number.working = say(sample) + " - " + say(blank);
  number.slips = {{sample + blank, "the blank was added instead of taken off"},
                  {sample, "the blank was not taken off: the colour and haze of the urine itself are no "
                           "precipitate"},
                  {blank, "that is the blank alone"}};
  return take(CurveLine::Net, number, entries.net);
}

double Work::read(double own_net) {
  const OwnCurve points = own_curve(curve, entries);
  auto candidates = read_off(points, own_net);
  if (points.size() < 2 || candidates.empty()) {
    return skip(CurveLine::Read, entries.read,
                "Your own standards draw no rising curve at this absorbance, so nothing can be read off it.");
  }
  const double top = curve.values.back();
  constexpr double as_tens = 10;
  DayNumber number;
  number.expected = nearest(candidates, entries.read);
  number.tolerance = curve.read_within * top;
  number.unit = unit;
  number.working = "the curve at " + say(own_net);
  const auto slip_at = [&](double absorbance, const char* words) {
    for (const double at : read_off(points, absorbance)) {
      number.slips.push_back({at, words});
    }
  };
  if (entries.sample) {
    slip_at(*entries.sample, "it was read at the specimen's absorbance with the blank still in it");
  }
  const auto& last = points.back();
  if (own_net > 0) {
    number.slips.push_back({last.second / own_net * last.first,
                            "the ratio of the absorbances was turned round: specimen over standard"});
  }
  number.slips.push_back({number.expected * as_tens, "ten times too much: check mg/dL against mg/L"});
  number.slips.push_back({number.expected / as_tens, "ten times too little: check mg/dL against mg/L"});
  number.slips.push_back(
      {own_net * last.first,
       "the absorbance was multiplied by the highest standard without dividing by that standard's own"});
  return take(CurveLine::Read, number, entries.read);
}

double Work::dilution() {
  if (!entries.own_dilution) {
    return std::max(1.0, skip(CurveLine::Dilution, entries.dilution,
                              "No tube of the specimen was read, so there is no dilution to name."));
  }
  const double times = *entries.own_dilution;
  const bool undiluted = std::abs(times - 1) < undiluted_within;
  DayNumber number;
  number.expected = times;
  number.tolerance = relative_rounding * times;
  number.unit = "times";
  number.working = undiluted ? "the urine went in as it was: 1 in 1"
                             : "what your tube held of diluted urine, over the urine in it";
  if (!undiluted) {
    number.slips = {{times - 1, "that counts the parts of water only; one part in four more is five in all"},
                    {1 / times, "that is the share of the urine; the factor is its inverse"},
                    {1, "the urine in your tube was diluted"}};
  }
  const bool left_out = undiluted && entries.dilution.empty();
  return take(CurveLine::Dilution, number, left_out ? "1" : entries.dilution);
}

void Work::value(double own_read, double own_dilution) {
  const bool worked = entries.sample || reception::number_of(entries.read);
  if (!worked) {
    (void)skip(CurveLine::Value, entries.value, "There is no figure of your own it could come from.");
    return;
  }
  constexpr double as_tens = 10;
  DayNumber number;
  number.expected = own_read * own_dilution;
  number.tolerance = relative_rounding * std::abs(number.expected);
  number.unit = unit;
  number.working = say(own_read) + " × " + say(own_dilution);
  if (own_dilution > 1 + undiluted_within) {
    number.slips = {
        {own_read, "it was not multiplied by the dilution, so this is what the tube held, not the urine"},
        {own_read / own_dilution, "it was divided by the dilution instead of multiplied"},
        {own_read * (own_dilution - 1), "it was multiplied by the parts of water only"}};
  }
  number.slips.push_back({number.expected * as_tens, "ten times too much: check mg/dL against mg/L"});
  number.slips.push_back({number.expected / as_tens, "ten times too little: check mg/dL against mg/L"});
  (void)take(CurveLine::Value, number, entries.value);
}

} // namespace

std::vector<double> read_off(const OwnCurve& curve, double absorbance) {
  std::vector<double> found;
  read_pieces(curve, absorbance, found);
  read_line(curve, absorbance, false, found);
  read_line(curve, absorbance, true, found);
  return found;
}

std::vector<CurveVerdict> mark_curve_lines(const procedure::Curve& curve, const std::string& unit,
                                           const CurveEntries& entries) {
  Work work{curve, unit, entries};
  const double own_net = work.net();
  const double own_read = work.read(own_net);
  const double own_dilution = work.dilution();
  work.value(own_read, own_dilution);
  return std::move(work.lines);
}

} // namespace matula::scoring
