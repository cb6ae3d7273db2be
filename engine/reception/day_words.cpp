#include "engine/reception/day_parts.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <fmt/format.h>

namespace matula::reception {

namespace {

bool near(double value, double target, double tolerance) {
  constexpr double rounding = 1e-9;
  return std::abs(value - target) <= tolerance + rounding;
}

/// How far an entry may be from a slip's figure and still be taken for that slip.
double slip_tolerance(const DayNumber& number, double figure) {
  constexpr double relative = 0.02;
  const double wide = number.tolerance * (number.expected > 0 ? std::min(1.0, figure / number.expected) : 1);
  return std::max(wide, relative * std::abs(figure));
}

const DaySlip* find_slip(const DayNumber& number, double entered) {
  for (const DaySlip& slip : number.slips) {
    if (near(entered, slip.value, slip_tolerance(number, slip.value))) {
      return &slip;
    }
  }
  return nullptr;
}

std::string names(const std::vector<std::string>& keys, const DayRules& rules) {
  std::string all;
  for (const Band& band : rules.bands) {
    if (std::find(keys.begin(), keys.end(), band.key) != keys.end()) {
      all += (all.empty() ? "" : " or ") + band.label;
    }
  }
  return all;
}

std::string own_or(const std::string& entered, const std::string& truth) {
  return entered.empty() ? truth : entered;
}

} // namespace

std::optional<double> number_of(const std::string& text) {
  std::string plain = text;
  std::replace(plain.begin(), plain.end(), ',', '.');
  const auto first = plain.find_first_not_of(" +");
  if (first == std::string::npos) {
    return std::nullopt;
  }
  double value = 0;
  const char* end = plain.data() + plain.size();
  const auto read = std::from_chars(plain.data() + first, end, value);
  const bool digits_follow = std::any_of(read.ptr, end, [](char c) { return c >= '0' && c <= '9'; });
  if (read.ec != std::errc() || digits_follow || !std::isfinite(value)) {
    return std::nullopt;
  }
  return value;
}

std::string say(double value) {
  const double size = std::abs(value);
  return size >= 100  ? fmt::format("{:.0f}", value)
         : size >= 10 ? fmt::format("{:.3g}", value)
                      : fmt::format("{:g}", std::round(value * 1000) / 1000);
}

Worked judge_number(const DayNumber& number, const std::string& entered) {
  Worked worked;
  DayLine& line = worked.line;
  line = {number.item,          number.label, number.mark, true,       entered,
          say(number.expected), false,        "",          number.unit};
  worked.own = number.expected;
  const std::string unit = number.unit.empty() ? "" : " " + number.unit;
  const auto value = number_of(entered);
  if (!value) {
    line.reason =
        fmt::format("{} It is {} = {}{}.",
                    entered.empty() ? "No line was written." : fmt::format("\"{}\" is no number.", entered),
                    number.working, line.expected, unit);
    return worked;
  }
  worked.own = *value;
  line.right = near(*value, number.expected, number.tolerance);
  if (line.right) {
    return worked;
  }
  const DaySlip* slip = find_slip(number, *value);
  line.reason = fmt::format("From your own lines: {} = {}{}. You wrote {}{}.", number.working, line.expected,
                            unit, entered, slip == nullptr ? "" : ": " + slip->words);
  if (slip != nullptr && slip->meant > 0) {
    worked.own = slip->meant;
  }
  return worked;
}

DayLine judge_count(const DayRecord& day, std::size_t number, const Entries& entries) {
  const Void& one = day.voids[number];
  const bool belongs = counts(day, one);
  DayLine line;
  line.item = fmt::format("day.counts.{}", number + 1);
  line.label = fmt::format("Does the void of {} belong to the day?", say_clock(one.at_min));
  line.mark = "counts";
  line.entered = entries(line.item);
  line.expected = belongs ? "yes" : "no";
  line.right = line.entered == line.expected;
  if (line.right) {
    return line;
  }
  const char* why =
      one.at_min <= day.start_min
          ? "At the start the bladder is emptied and that void thrown away: it was made in the hours before."
      : one.at_min > day.stop_min ? "It was passed after the end."
      : one.at_min == day.stop_min
          ? "The last void, at the end, belongs to the day: it was made in its last hours."
          : "Every void between start and end belongs to the day, also one that was lost.";
  line.reason = fmt::format(
      "{} {}", line.entered.empty() ? "Nothing was written." : "It is \"" + line.expected + "\".", why);
  return line;
}

DayLine judge_complete(const DayRecord& day, const DayRules& rules, const OwnLines& own,
                       const Entries& entries) {
  const IndexRange& range = rules.index.at(day.sex);
  bool voids_agree = true;
  for (std::size_t i = 0; i < day.voids.size(); ++i) {
    const std::string truth = counts(day, day.voids[i]) ? "yes" : "no";
    const std::string belongs = own_or(entries(fmt::format("day.counts.{}", i + 1)), truth);
    voids_agree = voids_agree && (belongs == "yes") == day.voids[i].kept;
  }
  const bool index_fits =
      own.creatinine_index >= range.low_mg_per_kg && own.creatinine_index <= range.high_mg_per_kg;
  DayLine line;
  line.item = "day.complete";
  line.label = "Is it a complete 24-hour collection?";
  line.mark = "complete";
  line.entered = entries(line.item);
  line.expected = voids_agree && index_fits ? "yes" : "no";
  line.right = line.entered == line.expected;
  if (!line.right) {
    line.reason = fmt::format(
        "From your own lines it is \"{}\". {} Your creatinine index of {} mg/kg is {} the {} to {} of a {}{}",
        line.expected,
        voids_agree ? "The voids you counted are those in the bottle."
                    : "The voids you counted are not those in the bottle.",
        say(own.creatinine_index), index_fits ? "within" : "outside", say(range.low_mg_per_kg),
        say(range.high_mg_per_kg), day.sex == "male" ? "man" : "woman",
        !voids_agree && index_fits ? "; the index is wide, and one void too many or too few can hide in it."
                                   : ".");
  }
  return line;
}

std::vector<std::string> bands_of(double protein_g, const DayRules& rules) {
  std::vector<std::string> keys;
  double low = 0;
  double also_low = 0;
  for (const Band& band : rules.bands) {
    const double room = rules.relative_tolerance * protein_g;
    const bool here = protein_g >= low - room && protein_g <= band.up_to_g + room;
    const bool elsewhere = protein_g >= also_low - room && protein_g <= band.also_up_to_g + room;
    if (here || elsewhere) {
      keys.push_back(band.key);
    }
    low = band.up_to_g;
    also_low = band.also_up_to_g;
  }
  return keys;
}

DayLine judge_band(const DayRules& rules, const OwnLines& own, const Entries& entries) {
  DayLine line;
  line.item = "day.band";
  line.label = "Band of the day's protein";
  line.mark = "band";
  line.entered = entries(line.item);
  const auto keys = bands_of(own.protein_g, rules);
  line.expected = names(keys, rules);
  line.right = std::find(keys.begin(), keys.end(), line.entered) != keys.end();
  if (line.right) {
    return line;
  }
  line.reason =
      fmt::format("Your own {} g in 24 hours is {}. The lines: ", say(own.protein_g), line.expected);
  for (const Band& band : rules.bands) {
    if (!std::isfinite(band.up_to_g)) {
      line.reason += band.label + " above.";
      continue;
    }
    line.reason += fmt::format("{} up to {} g", band.label, say(band.up_to_g));
    line.reason += band.also_up_to_g < band.up_to_g
                       ? fmt::format(" (in other books {} to 3.5 g), ", say(band.also_up_to_g))
                       : ", ";
  }
  return line;
}

std::string pattern_of(double day_mg_per_h, double night_mg_per_h, const DayRules& rules) {
  if (night_mg_per_h > rules.night_limit_mg_per_h) {
    return "constant";
  }
  return day_mg_per_h > rules.night_limit_mg_per_h ? "postural" : "none";
}

DayLine judge_pattern(const DayRules& rules, const OwnLines& own, const Entries& entries) {
  DayLine line;
  line.item = "day.pattern";
  line.label = "Pattern of day and night";
  line.mark = "pattern";
  line.entered = entries(line.item);
  line.expected = pattern_of(own.day_mg_per_h, own.night_mg_per_h, rules);
  line.right = line.entered == line.expected;
  if (!line.right) {
    line.reason =
        fmt::format("From your own lines {:.1f} mg an hour are lost by day and {:.1f} by night, lying down; "
                    "up to {} an hour (50 mg "
                    "in 8 hours) is usual. That is \"{}\".",
                    own.day_mg_per_h, own.night_mg_per_h, say(rules.night_limit_mg_per_h), line.expected);
  }
  return line;
}

} // namespace matula::reception
