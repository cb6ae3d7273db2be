#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace matula::reading {

/// The trade's ordinal scale.
enum class Grade { Negative, Trace, OnePlus, TwoPlus, ThreePlus, FourPlus };
inline constexpr std::size_t grade_count = 6;

/// "negative", "trace", "1+", "2+", "3+", "4+".
[[nodiscard]] std::string to_word(Grade grade);

/// The grade a word names; nothing for any other word.
[[nodiscard]] std::optional<Grade> grade_from_word(std::string_view word);

} // namespace matula::reading
