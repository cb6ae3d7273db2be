#include "engine/reception/day.hpp"

#include "engine/reception/day_parts.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace matula::reception {

namespace {

constexpr double ml_per_l = 1000;

using Concentration = double Bottle::*;

/// Volumes a learner may come to who takes the wrong voids into a bottle.
void add_void_slips(const DayRecord& day, const Bottle& bottle, DayNumber& number) {
  for (const Void& one : day.voids) {
    if (one.bottle != bottle.key) {
      continue;
    }
    const bool first = one.at_min <= day.start_min;
    const std::string at = say_clock(one.at_min);
    if (!one.kept) {
      number.slips.push_back({bottle.volume_ml + one.volume_ml,
                              first ? "the void at the start (" + at + ") was added, but it was thrown away"
                                    : "the void of " + at + " was added, but it never reached the bottle"});
    } else if (first) {
      number.slips.push_back({bottle.volume_ml - one.volume_ml,
                              "the void at the start (" + at +
                                  ") was left out, but it is in the bottle and was measured with the rest"});
    } else {
      number.slips.push_back({bottle.volume_ml - one.volume_ml, "the void of " + at + " was left out"});
    }
  }
}

void add_litre_slip(DayNumber& number) {
  number.slips.push_back(
      {number.expected / ml_per_l, "that is in litres; the line asks for millilitres", number.expected});
}

/// Grams of something: concentration times own volume, summed over the bottles.
DayNumber gram_line(const std::vector<Bottle>& bottles, const std::vector<double>& own_ml,
                    Concentration wanted, Concentration other, const DayRules& rules) {
  DayNumber number;
  double swapped = 0;
  double all_ml = 0;
  for (std::size_t i = 0; i < bottles.size(); ++i) {
    number.expected += grams(bottles[i].*wanted, own_ml[i]);
    swapped += grams(bottles[i].*other, own_ml[i]);
    all_ml += own_ml[i];
    number.working += fmt::format("{}{} g/L × {} L", i == 0 ? "" : " + ", say(bottles[i].*wanted),
                                  say(own_ml[i] / ml_per_l));
  }
  number.tolerance = std::max(rules.gram_tolerance, rules.relative_tolerance * number.expected);
  number.unit = "g";
  const double right = number.expected;
  number.slips = {{right * ml_per_l, "the volume was not turned from millilitres into litres"},
                  {right / ml_per_l, "it was divided by 1000 once too often"},
                  {right * 10, "ten times too much: check g/L against g/dL"},
                  {right / 10, "ten times too little: g/L is not g/dL"},
                  {swapped, "the concentration of the other substance was taken"}};
  if (bottles.size() == 1 && all_ml > 0) {
    const double concentration = bottles.front().*wanted;
    number.slips.push_back({concentration, "that is the concentration; it was not multiplied by the volume"});
    number.slips.push_back(
        {concentration / (all_ml / ml_per_l), "it was divided by the volume instead of multiplied"});
  }
  return number;
}

/// The exercise as it is worked through.
struct Work {
  const DayRecord& day;
  const DayRules& rules;
  const Entries& entries;
  std::vector<Bottle> bottles = bottles_of(day);
  std::vector<double> own_ml{};
  OwnLines own{};
  std::vector<DayLine> lines{};

  double take(const DayNumber& number) {
    auto worked = judge_number(number, entries(number.item));
    lines.push_back(std::move(worked.line));
    return worked.own;
  }

  void own_protein();
  void volumes();
  void creatinine();
  void protein();
  void parts();
};

/// Where the protein is the learner's to measure, the sums go on from the figure on the worksheet.
void Work::own_protein() {
  const auto own_figure = day.protein_item.empty() ? std::nullopt : number_of(entries(day.protein_item));
  if (own_figure && bottles.size() == 1) {
    bottles.front().protein_g_per_l = *own_figure * day.protein_g_per_l_of_unit;
  }
}

void Work::volumes() {
  double total = 0;
  for (const Bottle& bottle : bottles) {
    DayNumber number;
    const bool whole = bottle.key == "whole";
    number.item = whole ? "day.volume_ml" : "day." + bottle.key + "_ml";
    number.label = whole ? "Volume in the bottle" : "Volume of the " + bottle.key + " bottle";
    number.mark = whole ? "volume" : "part_ml";
    number.expected = bottle.volume_ml;
    number.tolerance = rules.volume_tolerance_ml;
    number.unit = "mL";
    number.working = "all that went into it";
    add_void_slips(day, bottle, number);
    add_litre_slip(number);
    own_ml.push_back(take(number));
    total += own_ml.back();
  }
  if (bottles.size() > 1) {
    DayNumber number{"day.volume_ml",
                     "Volume of both bottles",
                     "volume",
                     total,
                     rules.volume_tolerance_ml,
                     "mL",
                     "day and night together",
                     {}};
    number.slips = {{own_ml.front(), "the night's bottle was left out"},
                    {own_ml.back(), "the day's bottle was left out"}};
    add_litre_slip(number);
    (void)take(number);
  }
}

void Work::creatinine() {
  auto number = gram_line(bottles, own_ml, &Bottle::creatinine_g_per_l, &Bottle::protein_g_per_l, rules);
  number.item = "day.creatinine_g";
  number.label = "Creatinine in 24 hours";
  number.mark = "creatinine";
  const double own_g = take(number);
  DayNumber index{"day.index_mg_per_kg",
                  "Creatinine index",
                  "index",
                  creatinine_index(own_g, day.weight_kg),
                  rules.index_tolerance,
                  "mg/kg",
                  fmt::format("{} g × 1000 / {} kg", say(own_g), say(day.weight_kg)),
                  {}};
  index.tolerance = std::max(index.tolerance, rules.relative_tolerance * index.expected);
  index.slips = {{index.expected / 1000, "grams were not turned into milligrams"},
                 {own_g * day.weight_kg, "it was multiplied by the weight instead of divided"},
                 {own_g > 0 ? day.weight_kg / own_g : 0, "the division was turned round"}};
  own.creatinine_index = take(index);
}

void Work::protein() {
  auto number = gram_line(bottles, own_ml, &Bottle::protein_g_per_l, &Bottle::creatinine_g_per_l, rules);
  number.item = "day.protein_g";
  number.label = "Protein in 24 hours";
  number.mark = "protein";
  if (!day.protein_item.empty()) {
    number.working =
        fmt::format("{} {}, that is {}", say(bottles.front().protein_g_per_l / day.protein_g_per_l_of_unit),
                    day.protein_unit, number.working);
  }
  own.protein_g = take(number);
}

void Work::parts() {
  constexpr double mg_per_g = 1000;
  for (std::size_t i = 0; i < bottles.size(); ++i) {
    const Bottle& bottle = bottles[i];
    auto number =
        gram_line({bottle}, {own_ml[i]}, &Bottle::protein_g_per_l, &Bottle::creatinine_g_per_l, rules);
    number.item = "day." + bottle.key + "_protein_g";
    number.label = "Protein of the " + bottle.key + " bottle";
    number.mark = "part_protein";
    const double own_g = take(number);
    const double rate = bottle.hours > 0 ? own_g * mg_per_g / bottle.hours : 0;
    (bottle.key == "day" ? own.day_mg_per_h : own.night_mg_per_h) = rate;
  }
}

} // namespace

std::vector<std::string> day_items(const DayRecord& day) {
  std::vector<std::string> items;
  for (std::size_t i = 1; i <= day.voids.size(); ++i) {
    items.push_back(fmt::format("day.counts.{}", i));
  }
  const std::vector<std::string> parts{"day.day_ml", "day.night_ml"};
  const std::vector<std::string> sums{"day.volume_ml", "day.creatinine_g", "day.index_mg_per_kg",
                                      "day.complete",  "day.protein_g",    "day.band"};
  const std::vector<std::string> posture{"day.day_protein_g", "day.night_protein_g", "day.pattern"};
  if (day.pair()) {
    items.insert(items.end(), parts.begin(), parts.end());
  }
  items.insert(items.end(), sums.begin(), sums.end());
  if (day.pair()) {
    items.insert(items.end(), posture.begin(), posture.end());
  }
  return items;
}

std::vector<DayLine> mark_day(const DayRecord& day, const DayRules& rules, const Entries& entries) {
  Work work{day, rules, entries};
  for (std::size_t i = 0; i < day.voids.size(); ++i) {
    work.lines.push_back(judge_count(day, i, entries));
  }
  work.own_protein();
  work.volumes();
  work.creatinine();
  work.lines.push_back(judge_complete(day, rules, work.own, entries));
  work.protein();
  work.lines.push_back(judge_band(rules, work.own, entries));
  if (day.pair()) {
    work.parts();
    work.lines.push_back(judge_pattern(rules, work.own, entries));
  }
  return std::move(work.lines);
}

} // namespace matula::reception
