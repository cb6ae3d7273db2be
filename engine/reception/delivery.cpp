#include "engine/reception/delivery.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace matula::reception {

namespace {

constexpr int hour_min = 60;
constexpr int day_min = 24 * hour_min;

/// The two digits that stand at `at`; -1 when there are none.
int two_digits(const std::string& text, std::size_t at) {
  const auto digit = [&](std::size_t i) {
    return i < text.size() && text[i] >= '0' && text[i] <= '9' ? text[i] - '0' : -1;
  };
  const int tens = digit(at);
  const int ones = digit(at + 1);
  return tens < 0 || ones < 0 ? -1 : 10 * tens + ones;
}

} // namespace

bool DayRecord::pair() const {
  return std::any_of(voids.begin(), voids.end(), [](const Void& one) { return one.bottle != "whole"; });
}

std::string say_clock(int minutes) {
  const int day = minutes / day_min;
  const auto clock = fmt::format("{:02}:{:02}", minutes % day_min / hour_min, minutes % hour_min);
  return day == 0 ? clock : fmt::format("{} day {}", clock, day + 1);
}

std::optional<int> clock_from_text(const std::string& text) {
  constexpr std::size_t clock_letters = 5;
  const std::string before_day = " day ";
  const int hours = two_digits(text, 0);
  const int minutes = two_digits(text, 3);
  if (hours < 0 || hours > 23 || minutes < 0 || minutes > 59 || text[2] != ':') {
    return std::nullopt;
  }
  int day = 1;
  if (text.size() > clock_letters) {
    const bool named = text.size() == clock_letters + before_day.size() + 1 &&
                       text.compare(clock_letters, before_day.size(), before_day) == 0;
    day = named ? text.back() - '0' : 0;
    if (day < 1 || day > 9) {
      return std::nullopt;
    }
  }
  return (day - 1) * day_min + hours * hour_min + minutes;
}

} // namespace matula::reception
