#include "engine/author/number_pattern.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

namespace matula::author {

namespace {

bool all_of(const std::string& digits, char digit) {
  return std::all_of(digits.begin(), digits.end(), [digit](char one) { return one == digit; });
}

std::string any(std::size_t count) {
  return count == 0 ? "" : count == 1 ? "[0-9]" : "[0-9]{" + std::to_string(count) + "}";
}

std::string span(char low, char high) {
  return low == high ? std::string(1, low) : std::string("[") + low + "-" + high + "]";
}

/// Numbers of equally many digits, as alternatives.
void same_length(const std::string& before, std::string low, std::string high,
                 std::vector<std::string>& parts) {
  const std::string low_rest = low.substr(1);
  const std::string high_rest = high.substr(1);
  if (low.front() == high.front() && !low_rest.empty()) {
    same_length(before + low.front(), low_rest, high_rest, parts);
    return;
  }
  char from = low.front();
  char to = high.front();
  if (!all_of(low_rest, '0')) {
    same_length(before + from, low_rest, std::string(low_rest.size(), '9'), parts);
    ++from;
  }
  const bool whole = all_of(high_rest, '9');
  if (!whole) {
    --to;
  }
  if (from <= to) {
    parts.push_back(before + span(from, to) + any(low_rest.size()));
  }
  if (!whole) {
    same_length(before + high.front(), std::string(high_rest.size(), '0'), high_rest, parts);
  }
}

std::string escaped(const std::string& unit) {
  std::string out;
  for (const char letter : unit) {
    out += letter == '/' || letter == '.' ? std::string("\\") + letter : std::string(1, letter);
  }
  return out;
}

/// Decimal numbers from low to high, each taken outwards to a whole number.
std::string decimals(double low, double high) {
  constexpr double rounding = 1e-9;
  const auto from = static_cast<long long>(std::floor(low + rounding));
  const auto below = static_cast<long long>(std::ceil(high - rounding)); // The last one, with no decimals.
  std::string pattern = "(?:0*" + std::to_string(below) + "(?:\\.0*)?";
  if (from < below) {
    pattern += "|0*(?:" + whole_numbers(from, below - 1) + ")(?:\\.[0-9]*)?";
  }
  return pattern + (from == 0 ? "|\\.[0-9]+" : "") + "|[0-9]+(?:\\.[0-9]*)?[eE][+-]?[0-9]+)";
}

} // namespace

std::string whole_numbers(long long low, long long high) {
  std::vector<std::string> parts;
  for (long long from = low; from <= high;) {
    const std::string first = std::to_string(from);
    const long long longest = std::stoll(std::string(first.size(), '9'));
    const long long to = std::min(high, longest);
    same_length("", first, std::to_string(to), parts);
    from = to + 1;
  }
  std::string all;
  for (const auto& part : parts) {
    all += (all.empty() ? "" : "|") + part;
  }
  return all;
}

std::string quantity_pattern(const scenario::Measure& measure) {
  const double first = measure.units.front().in_base;
  std::string all;
  for (const auto& unit : measure.units) {
    const double per = first / unit.in_base;
    all += (all.empty() ? "" : "|") + decimals(std::max(0.0, measure.low * per), measure.high * per) +
           "[ \\t]*" + escaped(unit.word);
  }
  return "^[ \\t]*\\+?(?:" + all + ")[ \\t]*$";
}

} // namespace matula::author
