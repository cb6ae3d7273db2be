#pragma once

#include <tl/expected.hpp>

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace matula::strict {

/// One step of the way to a value: a key, and which element where it names a list of tables.
struct Step {
  std::string key;
  std::optional<std::size_t> element;
};
using Path = std::vector<Step>;

/// "specimen.leg[0].hours". Empty for words that are no path.
[[nodiscard]] Path path_from(std::string_view words);

/// What came of an edit, or in a sentence why it could not be made.
using Edited = tl::expected<std::string, std::string>;

/// Puts a value (as TOML writes it: `6.0`, `"60 mL"`, `["a", "b"]`) at a path of a TOML text and leaves every
/// other byte as it was: comments, order, blanks, ends of lines. The same value again changes nothing. A key
/// that is not there is added behind the last one of its table, a table that is not there behind the last one
/// of its family. The text is read again before it is handed out, and must differ in this value alone.
[[nodiscard]] Edited set_value(const std::string& text, const Path& path, const std::string& value);

/// Takes out the line or lines of a key, or its place in an inline table; of a table its heading and all that
/// stands under it. Nothing to take out is no error.
[[nodiscard]] Edited remove_value(const std::string& text, const Path& path);

/// Adds one more `[[path]]` with these lines ("key = value") behind the last one there is.
[[nodiscard]] Edited add_element(const std::string& text, const Path& path,
                                 const std::vector<std::string>& lines);

/// The value at a path as it stands in the text; nothing when there is none, or a table.
[[nodiscard]] std::optional<std::string> value_at(const std::string& text, const Path& path);

} // namespace matula::strict
