#include "engine/practice/unknown.hpp"

#include <fmt/format.h>

#include <charconv>
#include <cmath>

namespace matula::practice {

namespace {

template <class Number> bool read(const std::string& text, Number& number) {
  const char* end = text.data() + text.size();
  const auto done = std::from_chars(text.data(), end, number);
  return done.ec == std::errc() && done.ptr == end;
}

} // namespace

bool Unknown::operator==(const Unknown& other) const {
  return to_text(*this) == to_text(other);
}

std::string to_text(const Unknown& unknown) {
  return fmt::format("{}/{}/{}/{:.4f}/{}", to_word(unknown.skill), unknown.what, unknown.trap, unknown.target,
                     unknown.seed);
}

std::optional<Unknown> unknown_from_text(std::string_view text) {
  constexpr std::size_t parts = 5;
  const auto words = split(text, '/');
  Unknown unknown;
  const auto skill = words.size() == parts ? skill_from_word(words[0]) : std::nullopt;
  if (!skill || !read(words[3], unknown.target) || !std::isfinite(unknown.target) ||
      !read(words[4], unknown.seed)) {
    return std::nullopt;
  }
  unknown.skill = *skill;
  unknown.what = words[1];
  unknown.trap = words[2];
  return unknown;
}

std::vector<std::string> rules_of(const Unknown& unknown) {
  return is_of_rules(unknown.skill) ? split(unknown.what, '+') : std::vector<std::string>();
}

std::vector<std::string> split(std::string_view words, char at) {
  std::vector<std::string> parts;
  std::size_t from = 0;
  for (std::size_t end = words.find(at); end != std::string_view::npos; end = words.find(at, from)) {
    parts.emplace_back(words.substr(from, end - from));
    from = end + 1;
  }
  parts.emplace_back(words.substr(from));
  return parts;
}

} // namespace matula::practice
