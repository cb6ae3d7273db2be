#include "engine/reception/day.hpp"

#include <algorithm>
#include <cmath>

namespace matula::reception {

namespace {

constexpr double ml_per_l = 1000;
constexpr double min_per_hour = 60;

/// As a laboratory reports it.
double to_hundredth(double value) {
  return std::round(value * 100) / 100;
}

/// Minutes at which the filling of a bottle began and ended.
std::pair<int, int> span_of(const DayRecord& day, const std::string& key) {
  int from = day.start_min;
  int to = day.start_min;
  for (const Void& one : day.voids) {
    if (one.bottle == key) {
      to = std::max(to, one.at_min);
    } else if (key == "night" && one.bottle == "day") {
      from = std::max(from, one.at_min);
    }
  }
  return {from, key == "whole" ? day.stop_min : to};
}

Bottle fill(const DayRecord& day, const std::string& key) {
  Bottle bottle;
  bottle.key = key;
  double protein_g = 0;
  double creatinine_g = 0;
  for (const Void& one : day.voids) {
    if (one.kept && one.bottle == key) {
      bottle.volume_ml += one.volume_ml;
      protein_g += grams(one.protein_g_per_l, one.volume_ml);
      creatinine_g += grams(one.creatinine_g_per_l, one.volume_ml);
    }
  }
  if (bottle.volume_ml > 0) {
    bottle.protein_g_per_l = to_hundredth(protein_g * ml_per_l / bottle.volume_ml);
    bottle.creatinine_g_per_l = to_hundredth(creatinine_g * ml_per_l / bottle.volume_ml);
  }
  const auto [from, to] = span_of(day, key);
  bottle.hours = (to - from) / min_per_hour;
  return bottle;
}

double share(double found, double truth) {
  return truth > 0 ? found / truth - 1 : 0;
}

} // namespace

bool counts(const DayRecord& day, const Void& one) {
  return one.at_min > day.start_min && one.at_min <= day.stop_min;
}

double grams(double g_per_l, double volume_ml) {
  return g_per_l * volume_ml / ml_per_l;
}

double creatinine_index(double creatinine_g, double weight_kg) {
  constexpr double mg_per_g = 1000;
  return weight_kg > 0 ? creatinine_g * mg_per_g / weight_kg : 0;
}

std::vector<Bottle> bottles_of(const DayRecord& day) {
  if (day.pair()) {
    return {fill(day, "day"), fill(day, "night")};
  }
  return {fill(day, "whole")};
}

double Balance::volume_error() const {
  return share(bottle_ml, true_ml);
}

double Balance::protein_error() const {
  return share(bottle_protein_g, true_protein_g);
}

Balance balance_of(const DayRecord& day) {
  Balance balance;
  for (const Void& one : day.voids) {
    const double protein_g = grams(one.protein_g_per_l, one.volume_ml);
    if (counts(day, one)) {
      balance.true_ml += one.volume_ml;
      balance.true_protein_g += protein_g;
    }
    if (one.kept) {
      balance.bottle_ml += one.volume_ml;
      balance.bottle_protein_g += protein_g;
    }
  }
  return balance;
}

} // namespace matula::reception
