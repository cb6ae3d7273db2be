#include "engine/scoring/explain.hpp"

#include <cmath>
#include <fmt/format.h>
#include <optional>

namespace matula::scoring {
namespace {

constexpr std::string_view time_ending = "_time";

bool ends_with(std::string_view text, std::string_view ending) {
  return text.size() > ending.size() && text.substr(text.size() - ending.size()) == ending;
}

std::string base_name(std::string_view placeholder) {
  if (!ends_with(placeholder, time_ending)) {
    return std::string(placeholder);
  }
  const auto base = std::string(placeholder.substr(0, placeholder.size() - time_ending.size()));
  return is_fact(base + "_s") ? base + "_s" : base;
}

double value_of(const std::string& name, const Rule& rule, const Facts& facts) {
  if (name == "min") {
    return rule.min;
  }
  if (name == "max") {
    return rule.max;
  }
  const auto fact = facts.find(name == "found" ? rule.fact : name);
  return fact == facts.end() ? 0.0 : fact->second;
}

/// Calls `take(literal)` and `place(name)` in order over a sentence.
template <typename Take, typename Place> void walk(const std::string& sentence, Take take, Place place) {
  std::size_t at = 0;
  while (at < sentence.size()) {
    const auto open = sentence.find('{', at);
    const auto close = open == std::string::npos ? open : sentence.find('}', open);
    if (close == std::string::npos) {
      take(sentence.substr(at));
      return;
    }
    take(sentence.substr(at, open - at));
    place(sentence.substr(open + 1, close - open - 1));
    at = close + 1;
  }
}

} // namespace

std::string own_tube(const TestRule& test) {
  if (test.scale.kind == reading::ScaleKind::Paper) {
    return "your " + test.label;
  }
  if (test.scale.on_paper()) {
    return "your paper for the " + test.label;
  }
  return ends_with(test.label, " test") ? "your " + test.label + " tube" : "your tube for the " + test.label;
}

std::string capital(std::string text) {
  if (!text.empty() && text[0] >= 'a' && text[0] <= 'z') {
    text[0] = static_cast<char>(text[0] - 'a' + 'A');
  }
  return text;
}

std::string say_time(double seconds) {
  const auto whole = static_cast<long>(std::lround(seconds));
  const long minutes = whole / 60;
  if (minutes == 0) {
    return fmt::format("{} s", whole);
  }
  return whole % 60 == 0 ? fmt::format("{} min", minutes) : fmt::format("{} min {} s", minutes, whole % 60);
}

std::string say_number(double value) {
  const double size = std::abs(value);
  if (size >= 20) {
    return fmt::format("{:.0f}", value);
  }
  const double scale = size >= 1 ? 10 : 100;
  const double rounded = std::round(value * scale) / scale;
  return fmt::format("{:g}", rounded == 0 ? 0.0 : rounded);
}

std::string say_gravity(double relative_density) {
  return fmt::format("{:.3f}", relative_density);
}

std::string say_correction(double correction) {
  return std::abs(correction) < 0.00005 ? "0" : fmt::format("{:+.4g}", std::round(correction * 1e4) / 1e4);
}

std::string fill(const std::string& sentence, const Rule& rule, const Facts& facts) {
  std::string said;
  walk(
      sentence, [&](const std::string& literal) { said += literal; },
      [&](const std::string& name) {
        const double value = value_of(base_name(name), rule, facts);
        said += ends_with(name, time_ending) ? say_time(value) : say_number(value);
      });
  return said;
}

std::string unknown_placeholder(const std::string& sentence) {
  std::string unknown;
  walk(
      sentence, [](const std::string&) {},
      [&](const std::string& name) {
        const auto base = base_name(name);
        if (unknown.empty() && base != "found" && base != "min" && base != "max" && !is_fact(base)) {
          unknown = name;
        }
      });
  return unknown;
}

} // namespace matula::scoring
