#include "engine/render/label.hpp"

#include <algorithm>
#include <sstream>

namespace matula::render {

namespace {

constexpr std::size_t most_words = 8; // Every way to break them is tried.

std::vector<std::string> split(const std::string& text, char at) {
  std::vector<std::string> parts;
  std::istringstream in(text);
  for (std::string part; std::getline(in, part, at);) {
    if (!part.empty()) {
      parts.push_back(part);
    }
  }
  return parts;
}

/// Words at `at`; a lone sign such as "%" stays with the word before it.
std::vector<std::string> words_of(const std::string& text, char at) {
  std::vector<std::string> words;
  for (const std::string& part : split(text, at)) {
    if (part == "%" && !words.empty()) {
      words.back() += " " + part;
    } else {
      words.push_back(part);
    }
  }
  return words;
}

/// Largest size at which `lines` fit.
double size_of(const Lettering& lettering, const std::vector<std::string>& lines, double width, double height,
               double largest_px) {
  double size = std::min(largest_px, height / static_cast<double>(lines.size()));
  for (const std::string& line : lines) {
    const double wide = lettering.width(line, size);
    size = wide > width ? size * width / wide : size;
  }
  return size;
}

/// The words with a break after word i wherever bit i of `breaks` is set.
std::vector<std::string> broken(const std::vector<std::string>& words, unsigned breaks) {
  std::vector<std::string> lines{words.front()};
  for (std::size_t i = 1; i < words.size(); ++i) {
    if ((breaks >> (i - 1) & 1U) != 0) {
      lines.push_back(words[i]);
    } else {
      lines.back() += " " + words[i];
    }
  }
  return lines;
}

} // namespace

FittedLabel fit_label(const Lettering& lettering, const std::string& text, double width, double height,
                      double largest_px) {
  const bool given = text.find('\n') != std::string::npos;
  const std::vector<std::string> words = words_of(text, given ? '\n' : ' ');
  if (words.empty()) {
    return {};
  }
  const std::size_t gaps = std::min(words.size(), most_words) - 1;
  FittedLabel best;
  for (unsigned breaks = 0; breaks < 1U << gaps; ++breaks) {
    const auto lines = given ? words : broken(words, breaks);
    const double size = size_of(lettering, lines, width, height, largest_px);
    if (size > best.size_px) {
      best = {lines, size};
    }
  }
  return best;
}

} // namespace matula::render
