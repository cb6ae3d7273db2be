#include "sim/reading/grade.hpp"

#include <array>

namespace matula::reading {

namespace {
constexpr std::array<std::string_view, grade_count> words{"negative", "trace", "1+", "2+", "3+", "4+"};
}

std::string to_word(Grade grade) {
  return std::string(words[static_cast<std::size_t>(grade)]);
}

std::optional<Grade> grade_from_word(std::string_view word) {
  for (std::size_t i = 0; i < grade_count; ++i) {
    if (words[i] == word) {
      return static_cast<Grade>(i);
    }
  }
  return std::nullopt;
}

} // namespace matula::reading
