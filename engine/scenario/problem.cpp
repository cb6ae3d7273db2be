#include "engine/scenario/problem.hpp"

#include <algorithm>

namespace matula::scenario {

namespace {

/// Blanks as wide as the text before the caret; tabs stay tabs so that the caret stands under its character.
std::string indent_to(const std::string& text, int column) {
  std::string blanks;
  const std::size_t wanted = column < 1 ? 0 : static_cast<std::size_t>(column) - 1;
  for (std::size_t i = 0; i < std::min(wanted, text.size()); ++i) {
    const auto byte = static_cast<unsigned char>(text[i]);
    if ((byte & 0xC0U) == 0x80U) {
      continue; // inside a multi-byte character
    }
    blanks += text[i] == '\t' ? '\t' : ' ';
  }
  return blanks;
}

std::string place(const Problem& problem) {
  std::string words = problem.file.empty() ? "(text)" : problem.file;
  if (problem.line > 0) {
    words += ":" + std::to_string(problem.line);
    if (problem.column > 0) {
      words += ":" + std::to_string(problem.column);
    }
  }
  return words;
}

} // namespace

std::string to_text(const Problem& problem) {
  std::string words = place(problem) + ": found " + problem.found;
  if (!problem.expected.empty()) {
    words += "; expected " + problem.expected;
  }
  words += "\n";
  if (problem.line > 0 && !problem.text.empty()) {
    words += "    " + problem.text + "\n";
    if (problem.column > 0) {
      words += "    " + indent_to(problem.text, problem.column) + "^\n";
    }
  }
  return words;
}

std::string to_text(const Problems& problems) {
  std::string words;
  for (const Problem& problem : problems) {
    words += to_text(problem);
  }
  return words;
}

} // namespace matula::scenario
