#pragma once

#include "engine/drafting/row.hpp"

#include <string>

namespace matula::drafting {

/// The value at a path of a case's text as a person would type it: words without their quotes, numbers as
/// they stand. Empty when it is not there.
[[nodiscard]] std::string typed_at(const std::string& text, const std::string& path);

/// What was typed as TOML writes it. Whatever was typed is kept: what is no number where one belongs is
/// written as words, and the reader of cases says what to write instead.
[[nodiscard]] std::string toml_of(Entry entry, const std::string& typed, const std::string& unit);

/// Numbers typed with commas or blanks between them; empty when one of them is none.
[[nodiscard]] std::vector<std::string> numbers_typed(const std::string& typed);

/// "130 mg/dL" less or more by a step: a quarter for amounts, `step` for what has one.
/// The same words when they hold no number.
[[nodiscard]] std::string stepped(const std::string& value, bool more, double step);

/// Without blanks at both ends.
[[nodiscard]] std::string trimmed(const std::string& words);

} // namespace matula::drafting
