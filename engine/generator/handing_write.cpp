#include "engine/generator/handing.hpp"

#include "engine/generator/fill.hpp"
#include "engine/generator/luck.hpp"
#include "engine/generator/write.hpp"
#include "engine/reception/delivery.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace matula::generator {

namespace {

constexpr int day_min = 24 * 60;

/// A clock on the wall is read to five minutes.
int fives(double minutes) {
  constexpr double step = 5;
  return static_cast<int>(std::lround(minutes / step)) * static_cast<int>(step);
}

std::string number_of(const std::string& pattern, const Luck& luck) {
  constexpr std::size_t digits = 10;
  std::string number = pattern;
  for (std::size_t i = 0; i < number.size(); ++i) {
    if (number[i] == '#') {
      number[i] = static_cast<char>('0' + luck.pick("digit " + std::to_string(i), digits));
    }
  }
  return number;
}

std::string kind_of(const Handing& handing, const Person& person) {
  const std::string own = person.female ? "midstream_female" : "midstream_male";
  return handing.kind == "midstream" ? own : handing.kind;
}

std::string line(const std::string& key, const std::string& words) {
  return key + " = " + quoted(words) + "\n";
}

std::string times(const Handing& handing, const HandedIn& handed) {
  const std::string received = line("received", reception::say_clock(handed.received_min));
  if (!handing.time_written) {
    return received;
  }
  const std::string passed = reception::say_clock(handed.passed_min);
  return handing.kind != "day"
             ? line("passed", passed) + received
             : line("start", passed) + line("stop", reception::say_clock(handed.passed_min + day_min)) +
                   received;
}

} // namespace

HandedIn draw_handing(const std::optional<Handing>& handing, const Way& way, const Luck& luck) {
  HandedIn handed;
  for (std::size_t i = 0; i < way.stretches.size(); ++i) {
    const Stretch& stretch = way.stretches[i];
    const std::string leg = "leg " + std::to_string(i + 1);
    handed.stretch_min.push_back(fives(draw(stretch.minutes, leg.c_str(), luck)));
    handed.stretch_c.push_back(draw(stretch.temperature_c, (leg + " temperature").c_str(), luck));
    handed.delay_min += handed.stretch_min.back();
  }
  if (!handing) {
    return handed;
  }
  if (handing->delay_min) {
    handed.delay_min = fives(draw(*handing->delay_min, "delay", luck));
  }
  const std::string& passed = handing->passed[luck.pick("passed", handing->passed.size())];
  handed.passed_min = reception::clock_from_text(passed).value_or(0);
  handed.received_min = handed.passed_min + (handing->kind == "day" ? day_min : 0) + handed.delay_min;
  return handed;
}

std::string say_delay(int minutes) {
  constexpr int hour = 60;
  const auto count = [](int n, const char* unit) {
    return fmt::format("{} {}{}", n, unit, n == 1 ? "" : "s");
  };
  const int rest = minutes % hour;
  if (minutes < hour) {
    return count(minutes, "minute");
  }
  return count(minutes / hour, "hour") + (rest == 0 ? "" : " " + count(rest, "minute"));
}

std::string write_way(const Way& way, const HandedIn& handed) {
  std::string out;
  for (std::size_t i = 0; i < way.stretches.size(); ++i) {
    const Stretch& stretch = way.stretches[i];
    out += "\n[[specimen.leg]]\n" + line("hours", std::to_string(handed.stretch_min[i]) + " min") +
           line("temperature", plain_number(handed.stretch_c[i], 2) + " C");
    out += stretch.open ? "open = true\n" : "";
    out += stretch.lux > 0 ? line("light", plain_number(stretch.lux, 2) + " lx") : "";
  }
  for (const PutIn& put : way.put_in) {
    out += "\n[[specimen.preservative]]\n" + line("bottle", put.bottle) +
           line("dose_per_100_ml", put.dose_per_100_ml);
    out += put.at_min > 0 ? line("at", plain_number(put.at_min, 3) + " min") : "";
  }
  return out;
}

std::string write_handing(const Handing& handing, const HandedIn& handed, const Person& person,
                          const Luck& luck) {
  std::string out = "\n[collection]\n" + line("number", number_of(handing.number, luck)) +
                    line("kind", kind_of(handing, person)) + "request = " + list(handing.requests) + "\n" +
                    times(handing, handed) + line("container", handing.container);
  out += handing.storage == "room" ? "" : line("storage", handing.storage);
  out += handing.preservative == "none" ? "" : line("preservative", handing.preservative);
  out += handing.preservative_mislabelled ? "preservative_mislabelled = true\n" : "";
  for (const auto& [key, words] : handing.words) {
    out += line(key, fill(words, person));
  }
  for (const auto& [key, yes] : handing.flags) {
    out += key + (yes ? " = true\n" : " = false\n");
  }
  return out;
}

} // namespace matula::generator
