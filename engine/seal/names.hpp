#pragma once

#include <cstddef>
#include <string_view>

namespace matula::seal {

/// Pseudonyms and labels: one to 40 plain letters, digits, '-' and '_', the first a letter or a digit. They
/// stand in file names, so that nothing else is let in.
[[nodiscard]] bool is_name(std::string_view word);

/// Words for a person: UTF-8 without control signs, at most `most` bytes.
[[nodiscard]] bool is_line(std::string_view words, std::size_t most);

/// UTF-8 in which only line breaks and tabs are control signs.
[[nodiscard]] bool is_text(std::string_view words);

} // namespace matula::seal
